import { tol } from '../../../mechanics/tolerances'
import type { Solver } from '../../lp/solver'
import { isRoom, type RoomLimit } from '../elastic/limit'
import { entered } from './entered'
import { loosened } from './loosened'
import { missingAt } from './missing'
import { planExists } from './planExists'
import type { FeasibilityCache } from './shrink'

/** Halvings of the span between what is surely too little and what is surely enough. */
const halvings = 8

/**
 * The least that limits of one kind, each entered with the same amount more, must give for the whole
 * train to have a plan, all else as entered; solved again on the changed train before it is told.
 * What is passed as found must be made up first, at each of them its own amount.
 * @returns um, or mrad of pitch; undefined where it could not be found
 */
export function togetherOf(
  cache: FeasibilityCache,
  all: ReadonlySet<number>,
  group: readonly number[],
  solver: Solver,
): number | undefined {
  const room = missingAt(cache, all, group, solver)
  if (room === undefined) return undefined
  const { train } = cache.model
  const members = roomLimitsOf(cache, group)
  const enough = (amount: number): boolean =>
    planExists(
      members.reduce((changed, member) => loosened(changed, member, { amount }), train),
      cache,
      solver,
    )
  const already = members.map((member) => entered(train, member).already)
  let low = room + Math.min(...already)
  let high = (room + Math.max(...already)) * (1 + tol.aloneRoom)
  if (!enough(high)) return undefined
  for (let k = 0; k < halvings && high - low > tol.aloneRoom * high; k++) {
    const middle = (low + high) / 2
    if (enough(middle)) high = middle
    else low = middle
  }
  return high
}

/** What must at least be entered more at each for them to give so much room: um, or mrad of pitch. */
export const atLeastEntered = (
  cache: FeasibilityCache,
  group: readonly number[],
  room: number,
): number =>
  room +
  Math.min(...roomLimitsOf(cache, group).map((one) => entered(cache.model.train, one).already))

const roomLimitsOf = (cache: FeasibilityCache, group: readonly number[]): RoomLimit[] =>
  group.flatMap((index) => {
    const member = cache.model.members[index]
    return member && isRoom(member) ? [member] : []
  })
