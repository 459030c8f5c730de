import { HoldSolver } from '../engine/holds/holdSolver'
import type { PlanAnswer } from '../engine/plan/answer'
import { planRead } from '../engine/planTrain'
import type { Solver } from '../engine/solver/solver'
import { TradeoffPlanner } from '../engine/tradeoff/tradeoff'
import type { TrainDocument } from '../engine/train/document'
import type { Train } from '../engine/train/model'

/** The trade-off last followed; the share asked for is no part of its key. */
let kept: { readonly key: string; planner: TradeoffPlanner | undefined } | undefined

const keyOf = (document: TrainDocument): string =>
  JSON.stringify({ ...document, plan: { ...document.plan, share: undefined } })

/**
 * The plan of a train whose share alone is being changed, without prices: from its trade-off where
 * that is known.
 */
export function planAlong(document: TrainDocument, train: Train, solver: Solver): PlanAnswer {
  const planner = kept?.key === keyOf(document) ? kept.planner : undefined
  return planner ? planner.planAt(train.plan.share) : planRead(train, solver, { prices: false })
}

/**
 * Makes the trade-off ready for the next plans along it, a program at a time.
 * @param pause lets messages in between two programs; false when something else is to be done
 */
export async function readyAlong(
  document: TrainDocument,
  train: Train,
  solver: Solver,
  pause: () => Promise<boolean>,
): Promise<void> {
  const key = keyOf(document)
  if (kept?.key === key) return
  const steps = TradeoffPlanner.steps(new HoldSolver(train, solver))
  for (;;) {
    if (!(await pause())) return
    const step = steps.next()
    if (!step.done) continue
    kept = { key, planner: step.value }
    return
  }
}
