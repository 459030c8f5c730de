import type { PlanFigures } from './plan/answer'
import { disturbedBodies } from './plan/disturbed'
import type { Tradeoff, TradeoffPlanner } from './studies/tradeoff/tradeoff'
import { tol } from '../mechanics/tolerances'
import { tidy } from '../language/tidy'
import type { Motion } from '../mechanics/motion'
import type { Micrometres } from '../mechanics/units'
import type { ChanceStudy } from './chance/chanceStudy'

/** A plan along the trade-off with its chances, parts of 1. */
export interface ChanceAlong {
  readonly share: number
  readonly cost: Micrometres
  /** Done blind, and read again and trimmed. */
  readonly all: number
  readonly reread: number
}

/** Shares are tried this far apart: the chance is not monotone along them. */
export const shareStep = 0.005

/** Every share from one down to the floor, and from there up to the whole tolerance in steps four times as wide. */
export function sharesAlong(from: number, { floor }: Tradeoff): { down: number[]; up: number[] } {
  const count = (distance: number, by: number) => Math.max(0, Math.floor(distance / by + tol.digit))
  return {
    down: Array.from({ length: count(from - floor, shareStep) + 1 }, (_, i) =>
      tidy(from - i * shareStep),
    ),
    up: Array.from({ length: count(1 - from, 4 * shareStep) }, (_, i) =>
      tidy(from + (i + 1) * 4 * shareStep),
    ),
  }
}

/**
 * Chances of the plans at some shares, a plan at a time, so that a caller can stop asking. Shares at which no plan is
 * proven are passed over.
 */
export function* chancesAt(
  study: ChanceStudy,
  planner: TradeoffPlanner,
  shares: readonly number[],
): Generator<ChanceAlong, void> {
  const asked = planner.planAt(study.train.plan.share)
  for (const share of shares) {
    const plan = planner.planAt(share)
    // nobody is shown one: as long as the plan itself keeps gear couplings off, so does every plan along the share
    if (tooStraight(plan) && !tooStraight(asked)) continue
    const motions = motionsOf(plan)
    if (!motions) continue
    // moves that no shim or dial shows are none: they would be counted as done without an error
    if (plan.status === 'planned' && disturbedBodies(study.train, motions).length === 0) continue
    const good = study.good(study.judged(motions))
    const cost = 'cost' in plan ? plan.cost : 0
    yield { share, cost, all: good.all / study.draws, reread: good.reread / study.draws }
  }
}

const tooStraight = ({ teeth = [] }: PlanFigures): boolean =>
  teeth.some(({ planned }) => planned?.tooStraight === true)

/** Own motions of the bodies of an answer that has a plan, in their order. */
const motionsOf = (plan: PlanFigures): readonly Motion[] | undefined =>
  plan.status === 'planned' || plan.status === 'in-tolerance'
    ? plan.bodies.map(({ move }) => move)
    : undefined

/**
 * The plan of best chance along the trade-off, from the plan's own share down, and what it costs more; undefined
 * where the plan itself is the best.
 */
export function closerPlan(
  along: readonly ChanceAlong[],
  cost: Micrometres,
): { share: number; exact: number; cost: Micrometres } | undefined {
  const best = along.reduce<ChanceAlong | undefined>(
    (top, one) => (top === undefined || one.all > top.all ? one : top),
    undefined,
  )
  return best && best !== along[0]
    ? { share: best.share, exact: best.all, cost: best.cost - cost }
    : undefined
}
