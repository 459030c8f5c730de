import type { ErrorGroup } from '../../mechanics/uncertainty/errorSource'
import { unmarked, type ChanceStudy, type JudgedPlan } from './chanceStudy'
import { groupName, type CouplingError } from './couplingErrors'
import { addBlock, markBad, type ErrorBlock } from './judge'

/** In how many draws a plan done blind is good if a group of errors alone were none, or half as large. */
interface WithoutGroup {
  readonly group: ErrorGroup
  readonly exact: number
  readonly halved: number
}

/** What a plan's chance hangs on: counts of good draws. */
export interface ChanceHangs {
  /** Every error half as large, and twice. */
  readonly half: number
  readonly double: number
  readonly without: readonly WithoutGroup[]
}

/** Parts of a group's errors that are taken off: all of them, half of them. */
const parts = { exact: 1, halved: 0.5 } as const
type Part = keyof typeof parts

/** One group of errors with the draws in which it decides, counted over the blocks. */
interface Tally {
  readonly group: ErrorGroup
  readonly good: Record<Part, number>
}

/** A group at one coupling: its errors of every state alike, and those of each state. */
interface GroupHere {
  readonly name: string
  readonly alike: readonly CouplingError[]
  readonly byState: readonly (readonly CouplingError[])[]
}

/**
 * A group bears on some couplings alone: there its errors are taken off and the draws judged again; elsewhere they stand
 * as they did. A draw is good when the number of couplings that are out in it comes to none.
 */
export function chanceHangs(study: ChanceStudy, plan: JudgedPlan): ChanceHangs {
  const here = plan.states.map((_, c) => groupsAt(study, plan, c))
  const tallies = new Map<string, Tally>()
  for (const { group } of [...study.standingSources, ...plan.sources])
    tallies.set(groupName(group), { group, good: { exact: 0, halved: 0 } })
  let [half, double] = [0, 0]
  study.blocks.sizes.forEach((size, block) => {
    const outHere = new Int16Array(size)
    const [outHalf, outDouble] = [new Uint8Array(size), new Uint8Array(size)]
    const changes = new Map<string, Record<Part, Int16Array>>()
    plan.states.forEach((states, c) => {
      const groups = here[c] ?? []
      const numbers = study.standing[c]?.numbers ?? 0
      const base = new Uint8Array(size)
      const marks = groups.map(() => ({
        exact: new Uint8Array(size),
        halved: new Uint8Array(size),
      }))
      const alike = groups.map((group) => study.blocks.sum(group.alike, numbers, block))
      const work = plan.work[c]?.alike ?? []
      const worked = study.blocks.sum(work, numbers, block)
      states.forEach((state, s) => {
        const total = study.blocks.standingAt(c, s, block).slice()
        addBlock(total, worked)
        markBad(base, state, total, 1)
        markBad(outHalf, state, total, 0.5)
        markBad(outDouble, state, total, 2)
        groups.forEach((group, g) => {
          const own = partOf(alike[g], group.byState[s] ?? [], numbers)
          for (const part of ['exact', 'halved'] as const) {
            const to = marks[g]?.[part]
            if (to) markBad(to, state, total, 1, own, parts[part])
          }
        })
      })
      addTo(outHere, base, 1)
      groups.forEach(({ name }, g) => {
        const change = changes.get(name) ?? {
          exact: new Int16Array(size),
          halved: new Int16Array(size),
        }
        changes.set(name, change)
        for (const part of ['exact', 'halved'] as const) {
          addTo(change[part], marks[g]?.[part], 1)
          addTo(change[part], base, -1)
        }
      })
    })
    half += unmarked(outHalf)
    double += unmarked(outDouble)
    for (const [name, { good }] of tallies)
      for (const part of ['exact', 'halved'] as const)
        good[part] += noughts(outHere, changes.get(name)?.[part])

    /** A group's errors in one state: those of every state alike and its own. */
    function partOf(
      common: ErrorBlock | undefined,
      own: readonly CouplingError[],
      numbers: number,
    ): ErrorBlock | undefined {
      if (own.length === 0) return common
      const sum = study.blocks.sum(own, numbers, block)
      if (common) addBlock(sum, common)
      return sum
    }
  })
  return {
    half,
    double,
    without: [...tallies.values()].map(({ group, good }) => ({ group, ...good })),
  }
}

/** The groups of errors that bear on a coupling. */
function groupsAt(study: ChanceStudy, plan: JudgedPlan, c: number): GroupHere[] {
  const standing = study.standing[c]
  const alike = [...(standing?.alike ?? []), ...(plan.work[c]?.alike ?? [])]
  const byState = standing?.byState ?? []
  const named = ({ group }: CouplingError) => groupName(group)
  const names = new Set([...alike, ...byState.flat()].map(named))
  return [...names].map((name) => ({
    name,
    alike: alike.filter((error) => named(error) === name),
    byState: byState.map((errors) => errors.filter((error) => named(error) === name)),
  }))
}

function addTo(counts: Int16Array, marks: Uint8Array | undefined, by: 1 | -1): void {
  if (!marks) return
  for (let i = 0; i < counts.length; i++)
    counts[i] = (counts[i] as number) + by * (marks[i] as number)
}

/** Draws in which nothing is out. */
function noughts(out: Int16Array, change: Int16Array | undefined): number {
  let count = 0
  for (let i = 0; i < out.length; i++)
    if ((out[i] as number) + (change ? (change[i] as number) : 0) === 0) count++
  return count
}
