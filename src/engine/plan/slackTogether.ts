import { tol } from '../../mechanics/tolerances'
import type { MotionGroup } from '../lp/parts'
import { shareColumn } from '../lp/program'
import type { PartPlan, PartSolver } from './partSolver'

interface GroupPlan {
  readonly group: MotionGroup
  readonly plan: PartPlan
}

/** Least cost of a part within a share; undefined where the solver stopped. */
type CostAt = (one: GroupPlan, share: number) => number | undefined

/**
 * Plans whose costs are equal differ by `tol.equalCost` of the whole cost, and each part has spent its own piece of that on
 * its worst share. Where one part is worse than the others, what the others need not spend may go there.
 * @param still worst share of the couplings that nothing moves
 * @returns the plans as they are where that brings the worst share down by less than `tol.worthSlack`
 */
export function slackTogether(
  plans: readonly GroupPlan[],
  solver: PartSolver,
  share: number,
  still: number,
): readonly GroupPlan[] {
  const costs = plans.map(({ plan }) => plan.least?.answer.objective ?? 0)
  const total = costs.reduce((sum, cost) => sum + cost, 0)
  const shares = plans.map((one) => shareOf(one, solver))
  const w = shares.indexOf(Math.max(...shares))
  const [worst, now] = [plans[w], shares[w]]
  if (plans.length < 2 || !worst || now === undefined || now <= still) return plans
  const slack = total * tol.equalCost
  const mine = costs[w] ?? 0
  const more = slack - mine * tol.equalCost
  if (more * (worst.plan.worth ?? Infinity) <= now * tol.worthSlack || more <= 0) return plans
  const best = solver.margin(worst.group, share, mine + slack, worst.plan)
  if (best.kind === 'stopped' || best.bound >= now * (1 - tol.worthSlack)) return plans
  const costAt: CostAt = ({ group, plan }, within) => {
    if (!plan.least && solver.standing(group) <= within) return 0
    return solver.costWithin(group, within, plan)
  }
  const within = smallestShare(plans, [Math.max(best.bound, still), now], total + slack, costAt)
  const caps = plans.map((one) => costAt(one, within))
  const spent = caps.reduce<number>((sum, cost) => sum + (cost ?? Infinity), 0)
  if (!(spent <= total + slack)) return plans
  const left = (total + slack - spent) / plans.length
  const out: GroupPlan[] = []
  for (const [i, one] of plans.entries()) {
    const cap = (caps[i] ?? 0) + left
    if (!one.plan.least && (shares[i] ?? 0) <= within) {
      out.push(one)
      continue
    }
    const margin = solver.margin(one.group, within, cap, one.plan)
    if (margin.kind === 'stopped') return plans
    out.push({ ...one, plan: { ...one.plan, values: margin.point.answer.columns } })
  }
  return out
}

/** Worst share of a part as planned. */
const shareOf = ({ group, plan }: GroupPlan, solver: PartSolver): number =>
  plan.values?.[shareColumn] ?? solver.standing(group)

/** Tries after which the span is taken as it is; five or six are usual. */
const mostTries = 20

/**
 * The smallest worst share of all parts together that costs no more. Cost falls as the share grows, along a curve that
 * bends upward: its chord crosses the price at a share that can be had, and a try just under that one shows whether
 * there is a smaller one.
 */
function smallestShare(
  plans: readonly GroupPlan[],
  [from, to]: readonly [number, number],
  most: number,
  costAt: CostAt,
): number {
  const cost = (share: number): number =>
    plans.reduce((sum, one) => sum + (costAt(one, share) ?? Infinity), 0)
  let [low, high] = [from, to]
  let [above, below] = [Infinity, cost(to)]
  const hair = () => tol.settled * high
  for (let i = 0; i < mostTries && high - low > hair(); i++) {
    const chord = Number.isFinite(above)
      ? low + ((high - low) * (above - most)) / (above - below)
      : (low + high) / 2
    const next = i === 0 ? from : i % 2 === 0 ? high - hair() / 2 : chord
    const tried = Math.min(Math.max(next, low + hair() / 2), high - hair() / 2)
    const spent = cost(tried)
    if (spent <= most) [high, below] = [tried, spent]
    else [low, above] = [tried, spent]
  }
  return high
}
