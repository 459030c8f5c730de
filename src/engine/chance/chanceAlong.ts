import type { PlanFigures } from '../plan/answer'
import type { TradeoffPlanner } from '../studies/tradeoff/tradeoff'
import { tidy } from '../../language/tidy'
import type { Motion } from '../../mechanics/motion'
import type { Micrometres } from '../../mechanics/units'
import type { ChanceStudy } from './chanceStudy'

/** A plan along the trade-off with its chances, parts of 1. */
export interface ChanceAlong {
  readonly share: number
  readonly cost: Micrometres
  /** Done blind, and read again and trimmed. */
  readonly all: number
  readonly reread: number
}

/** Shares are tried this far apart: the chance is not monotone along them. */
const step = 0.005

/**
 * Chances of the plans at every share from one down to the floor, a plan at a time, so that a caller can stop asking.
 * Shares at which no plan is proven are passed over.
 */
export function* chancesAlong(
  study: ChanceStudy,
  planner: TradeoffPlanner,
  from: number,
): Generator<ChanceAlong, void> {
  const { floor } = planner.curve
  for (let i = 0; ; i++) {
    const share = tidy(from - i * step)
    if (share < floor || share <= 0) return
    const plan = planner.planAt(share)
    const motions = motionsOf(plan)
    if (!motions) continue
    const good = study.good(study.judged(motions))
    const cost = 'cost' in plan ? plan.cost : 0
    yield { share, cost, all: good.all / study.draws, reread: good.reread / study.draws }
  }
}

/** Own motions of the bodies of an answer that has a plan, in their order. */
const motionsOf = (plan: PlanFigures): readonly Motion[] | undefined =>
  plan.status === 'planned' || plan.status === 'in-tolerance'
    ? plan.bodies.map(({ move }) => move)
    : undefined

/** The plan of best chance along the trade-off and what it costs more; undefined where the plan itself is the best. */
export function closerPlan(
  along: readonly ChanceAlong[],
  cost: Micrometres,
): { exact: number; cost: Micrometres } | undefined {
  const best = along.reduce<ChanceAlong | undefined>(
    (top, one) => (top === undefined || one.all > top.all ? one : top),
    undefined,
  )
  return best && best !== along[0] ? { exact: best.all, cost: best.cost - cost } : undefined
}
