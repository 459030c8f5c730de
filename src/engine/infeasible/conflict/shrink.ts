import type { Cut } from '../../lp/program'
import type { Solver } from '../../lp/solver'
import { partOf } from '../elastic/subproblem'
import { pressOf } from '../elastic/dualWeights'
import { reachOf, type Reach } from '../elastic/shareFeasibility'
import type { Universe } from '../elastic/elasticModel'

/** Asks whether members of one universe can be kept together; remembers what was asked. */
export class Asker {
  private readonly known = new Map<string, Reach>()

  constructor(
    readonly universe: Universe,
    readonly share: number,
    private readonly cuts: readonly Cut[],
    private readonly solver: Solver,
  ) {}

  reach(kept: ReadonlySet<number>): Reach {
    const key = [...kept].sort((a, b) => a - b).join(' ')
    const known = this.known.get(key)
    if (known) return known
    const part = partOf(this.universe, kept)
    const reach = reachOf(part.program, this.share, this.cuts, this.solver)
    this.known.set(key, reach)
    return reach
  }

  /** The members that press where a share was missed, with their weights. */
  press(kept: ReadonlySet<number>, missed: Extract<Reach, { kind: 'missed' }>) {
    return pressOf(partOf(this.universe, kept), missed)
  }
}

/**
 * A set of members that cannot be kept together though any of them gone lets the others be, found by
 * leaving out: first whole blocks in the order given, then members one by one, those that press least
 * first. After each leaving out only the members that press are looked at further.
 * @returns undefined where the solver stopped, or rounding kept the last set from being judged
 */
export function shrink(
  asker: Asker,
  start: ReadonlySet<number>,
  blocks: readonly ((member: number) => boolean)[],
): ReadonlySet<number> | undefined {
  const first = asker.reach(start)
  if (first.kind !== 'missed') return undefined
  let kept: ReadonlySet<number> = start
  let weights = asker.press(start, first)
  const without = (gone: ReadonlySet<number>): boolean | undefined => {
    const rest = new Set([...kept].filter((member) => !gone.has(member)))
    if (rest.size === kept.size) return true
    const reach = asker.reach(rest)
    if (reach.kind === 'stopped') return undefined
    if (reach.kind === 'met') return false
    weights = asker.press(rest, reach)
    kept = pressing(rest, weights)
    return true
  }
  for (const block of blocks)
    if (without(new Set([...kept].filter(block))) === undefined) return undefined
  kept = pressing(kept, weights)
  const needed = new Set<number>()
  for (;;) {
    const next = [...kept]
      .filter((member) => !needed.has(member))
      .sort((a, b) => weightOf(weights, a) - weightOf(weights, b) || a - b)[0]
    if (next === undefined) break
    const gone = without(new Set([next]))
    if (gone === undefined) return undefined
    if (!gone) needed.add(next)
  }
  return isIrreducible(asker, kept) ? kept : undefined
}

const weightOf = (weights: ReadonlyMap<number, { weight: number }>, member: number): number =>
  weights.get(member)?.weight ?? 0

const pressing = (
  kept: ReadonlySet<number>,
  weights: ReadonlyMap<number, unknown>,
): ReadonlySet<number> => new Set([...kept].filter((member) => weights.has(member)))

/** Cannot be kept together; can be without any one of them. */
export function isIrreducible(asker: Asker, set: ReadonlySet<number>): boolean {
  if (asker.reach(set).kind !== 'missed') return false
  return [...set].every(
    (member) => asker.reach(new Set([...set].filter((other) => other !== member))).kind === 'met',
  )
}
