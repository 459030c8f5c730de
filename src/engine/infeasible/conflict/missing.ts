import type { Train } from '../../../mechanics/train'
import { reach, programUnit, shareColumn, type Circle, type Row } from '../../lp/program'
import type { Solver } from '../../lp/solver'
import { leastRelaxation, withRelaxations, type Relaxation } from '../elastic/relaxation'
import { keyOf, elasticLimitOf } from '../elastic/limit'
import type { ShareFeasibility } from '../elastic/shareFeasibility'
import { subproblemOf } from '../elastic/subproblem'
import type { FeasibilityCache } from './shrink'

/** Whether the rest can be kept once these members are given up: where not, no amount of them is enough. */
export const reachWithout = (
  cache: FeasibilityCache,
  all: ReadonlySet<number>,
  group: readonly number[],
): ShareFeasibility['kind'] =>
  cache.reach(new Set([...all].filter((index) => !group.includes(index)))).kind

/**
 * The least by which members of an irreducible set would have to give, all of them alike and no other
 * member, for the rest to be kept: um of room, a share of tolerance, or mrad of pitch.
 * @returns undefined where nothing of the kind can give (a held body) or the solver stopped
 */
export function missingAt(
  cache: FeasibilityCache,
  set: ReadonlySet<number>,
  group: readonly number[],
  solver: Solver,
): number | undefined {
  const { members, train } = cache.model
  const first = members[group[0] ?? NaN]
  if (first === undefined || first.kind === 'held') return undefined
  const part = subproblemOf(cache.model, set)
  const keys = new Set(group.flatMap((index) => members[index] ?? []).map(keyOf))
  const give = relaxationOf(keys, first.kind === 'coupling' ? 1000 : 1)
  const known = cache.reach(set)
  const cuts = known.kind === 'stopped' ? [] : known.cuts
  const value = leastRelaxation(
    withRelaxations(part.program, [give]),
    [give],
    cache.share,
    cuts,
    solver,
  )?.[0]
  if (value === undefined) return undefined
  if (first.kind === 'coupling') return value
  return (value * programUnit) / (first.kind === 'tilt' ? tiltArm(train, first.body) : 1)
}

/**
 * One room for all rows and circles of these members.
 * @param keys of the members
 * @param price of one unit of that room, a program unit or a share, in the objective
 * @param only which of their rows and circles it is for
 */
export function relaxationOf(
  keys: ReadonlySet<string>,
  price: number,
  only: (meaning: Row['meaning']) => boolean = () => true,
): Relaxation {
  const concerns = (meaning: Row['meaning'], side: 'lower' | 'upper') =>
    only(meaning) && keys.has(keyOf(elasticLimitOf(meaning, side)))
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
