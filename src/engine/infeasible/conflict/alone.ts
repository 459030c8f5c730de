import { tol } from '../../../mechanics/tolerances'
import type { Solver } from '../../lp/solver'
import { isRoom, type ElasticLimit, type RoomLimit } from '../elastic/limit'
import { entered } from './entered'
import { loosened } from './loosened'
import { planExists } from './planExists'
import { missingAt, reachWithout } from './missing'
import type { FeasibilityCache } from './shrink'
import type { More } from './more'
import { toleranceRaise } from './toleranceRaise'

/** What one limit could do for the whole train, all else as entered. */
export type Alone =
  | { readonly kind: 'enough'; readonly more: More }
  | { readonly kind: 'never' }
  /** Only with more than ten times the limit. */
  | { readonly kind: 'beyond reason' }
  | { readonly kind: 'unknown' }

/**
 * The least that one limit must give, all else as entered, for the whole train to have a plan: solved
 * again on the changed train before it is told. A coupling's tolerance gives in all states at once, as
 * it is entered once.
 * @param all indices of everything that the train must respect
 */
export function aloneOf(
  cache: FeasibilityCache,
  all: ReadonlySet<number>,
  member: Exclude<ElasticLimit, { kind: 'held' }>,
  solver: Solver,
): Alone {
  const { members, train } = cache.model
  const group = [...all].filter((index) => sameEntry(members[index], member))
  const without = reachWithout(cache, all, group)
  if (without !== 'met') return { kind: without === 'missed' ? 'never' : 'unknown' }
  const more = isRoom(member)
    ? roomMore(cache, all, member, group, solver)
    : toleranceRaise(cache, all, group, solver)
  if (more === undefined) return { kind: 'unknown' }
  const size = isRoom(member) ? entered(train, member).size : 1
  if (size > 0 && more.amount > tol.reasonableTimes * size) return { kind: 'beyond reason' }
  return planExists(loosened(train, member, more), cache, solver)
    ? { kind: 'enough', more }
    : { kind: 'unknown' }
}

/** Whether both are entered in the train file as one number: a tolerance is, in all its states. */
export function sameEntry(one: ElasticLimit | undefined, other: ElasticLimit): boolean {
  if (one?.kind === 'coupling') return other.kind === 'coupling' && one.coupling === other.coupling
  return one === other
}

function roomMore(
  cache: FeasibilityCache,
  all: ReadonlySet<number>,
  member: RoomLimit,
  group: readonly number[],
  solver: Solver,
): More | undefined {
  const room = missingAt(cache, all, group, solver)
  if (room === undefined) return undefined
  const { already } = entered(cache.model.train, member)
  return { amount: (room + already) * (1 + tol.aloneRoom) }
}
