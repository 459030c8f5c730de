import type { Train } from '../../../mechanics/train'
import { programUnit, shareColumn, type Circle, type Row } from '../../lp/program'
import type { Solver } from '../../lp/solver'
import { leastGive, withGives, type Give } from '../elastic/relaxation'
import { keyOf, memberOf } from '../elastic/limit'
import { partOf } from '../elastic/subproblem'
import { reach } from '../../lp/rounds'
import type { Asker } from './shrink'

/**
 * The least by which members would have to give, all alike, for the whole train to be planned.
 * @returns um, or mrad of pitch; undefined where they alone are not enough
 */
export function missingInAll(
  asker: Asker,
  all: ReadonlySet<number>,
  group: readonly number[],
  solver: Solver,
): number | undefined {
  const without = new Set([...all].filter((index) => !group.includes(index)))
  return asker.reach(without).kind === 'met' ? missingAt(asker, all, group, solver) : undefined
}

/**
 * The least by which members of an irreducible set would have to give, all of them alike and no other
 * member, for the rest to be kept: um of room, a share of tolerance, or mrad of pitch.
 * @returns undefined where nothing of the kind can give (a held body) or the solver stopped
 */
export function missingAt(
  asker: Asker,
  set: ReadonlySet<number>,
  group: readonly number[],
  solver: Solver,
): number | undefined {
  const { members, train } = asker.universe
  const first = members[group[0] ?? NaN]
  if (first === undefined || first.kind === 'held') return undefined
  const part = partOf(asker.universe, set)
  const keys = new Set(group.flatMap((index) => members[index] ?? []).map(keyOf))
  const give = giveOf(keys, first.kind === 'coupling' ? 1000 : 1)
  const known = asker.reach(set)
  const cuts = known.kind === 'stopped' ? [] : known.cuts
  const value = leastGive(withGives(part.program, [give]), [give], asker.share, cuts, solver)?.[0]
  if (value === undefined) return undefined
  if (first.kind === 'coupling') return value
  return (value * programUnit) / (first.kind === 'tilt' ? tiltArm(train, first.body) : 1)
}

/**
 * One room for all rows and circles of these members.
 * @param keys of the members
 * @param only which of their rows and circles it is for
 */
export function giveOf(
  keys: ReadonlySet<string>,
  price: number,
  only: (meaning: Row['meaning']) => boolean = () => true,
): Give {
  const concerns = (meaning: Row['meaning'], side: 'lower' | 'upper') =>
    only(meaning) && keys.has(keyOf(memberOf(meaning, side)))
  return {
    name: 'more room',
    least: 0,
    most: reach,
    price,
    onRow: (row) => {
      const side = Number.isFinite(row.upper) ? 'upper' : 'lower'
      if (!concerns(row.meaning, side)) return 0
      return row.meaning.fact === 'tolerance' ? limitOf(row.terms) : side === 'upper' ? -1 : 1
    },
    onCircle: (circle: Circle) => {
      if (!concerns(circle.meaning, 'upper')) return {}
      return { radius: circle.radius.terms.get(shareColumn) ?? 1 }
    },
  }
}

/** A tolerance gives in shares: what stands before the share stands before its give. */
const limitOf = (terms: Row['terms']): number =>
  terms.find(([column]) => column === shareColumn)?.[1] ?? 0

/** Height that a tilt row weighs a pitch with (mm), as in the rows. */
function tiltArm(train: Train, index: number): number {
  const { feet, x0 } = train.bodies[index] ?? { feet: [], x0: 0 }
  return Math.max(1, ...feet.map((foot) => Math.abs(foot.x - x0)))
}
