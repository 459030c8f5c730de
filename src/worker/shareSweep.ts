import { HoldSolver } from '../engine/studies/holds/holdSolver'
import type { PlanAnswer } from '../engine/fieldwork/answer'
import { Budget } from '../engine/lp/budget'
import { tol } from '../mechanics/tolerances'
import { offStraight } from '../engine/offStraight'
import { PlanRun } from '../engine/plan/planRun'
import type { Solver } from '../engine/lp/solver'
import { TradeoffPlanner } from '../engine/studies/tradeoff/tradeoff'
import { keepsOff } from '../mechanics/misalignment/gearTeeth'
import type { Train } from '../mechanics/train'

/** A trade-off that is followed, and its plans by share; the share asked for is no part of its key. */
interface Followed {
  readonly key: string
  readonly planner: TradeoffPlanner
  readonly plans: Map<number, PlanAnswer>
  /** Shares whose plans were handed over before they were asked for. */
  readonly told: Set<number>
}

/** Least and most share in percent that a point is dragged to; it stops at whole ones. */
const [least, most] = [30, 100]

/** Plans are made ahead when a train has stood for so long (ms). */
const later = 300

/** Plans along a trade-off: the one last followed is kept. */
export class ShareSweepPlanner {
  private followed: Followed | undefined

  /**
   * The plan of a train whose share alone is being changed, without prices: from its trade-off where
   * that is known, and made ready beforehand where there was time.
   */
  plan(key: string, train: Train, solver: Solver): PlanAnswer {
    const kept = this.followed
    // on another side than the one a curve knows there may be a cheaper plan, or the only one
    if (keepsOff(train) || kept?.key !== key)
      return new PlanRun(offStraight(train, solver), solver).plan()
    const { share } = train.plan
    const plan = kept.plans.get(share) ?? kept.planner.planAt(share)
    kept.plans.set(share, plan)
    return plan
  }

  /**
   * Makes the trade-off ready for the next plans along it, a program at a time, and then the plans
   * themselves, outward from the share asked for now.
   * @param pause lets messages in between two programs; false when something else is to be done
   * @param made is told each plan, the first time it is made
   */
  async ready(
    key: string,
    train: Train,
    solver: Solver,
    pause: () => Promise<boolean>,
    made: (train: Train, answer: PlanAnswer) => void,
  ): Promise<void> {
    // of a train that is kept off dead straight no curve is known: each of its plans is made when it is asked for
    if (keepsOff(train)) return
    let kept = this.followed
    if (kept?.key !== key) {
      // the list and the curve that people see are worked out at the same time, and come first
      await new Promise((go) => setTimeout(go, later))
      const planner = await worked(train, solver, pause)
      if (!planner) return
      kept = { key, planner, plans: new Map(), told: new Set() }
      this.followed = kept
    }
    const { planner, plans, told } = kept
    for (const share of outward(train.plan.share)) {
      if (told.has(share)) continue
      if (!(await pause())) return
      const plan = plans.get(share) ?? planner.planAt(share)
      plans.set(share, plan)
      told.add(share)
      made({ ...train, plan: { ...train.plan, share } }, plan)
    }
  }
}

async function worked(
  train: Train,
  solver: Solver,
  pause: () => Promise<boolean>,
): Promise<TradeoffPlanner | undefined> {
  const budget = new Budget(solver, tol.planWork)
  const steps = TradeoffPlanner.steps(new HoldSolver(train, budget))
  for (;;) {
    if (!(await pause())) return undefined
    const step = budget.attempt(() => steps.next())
    if (!step) return undefined
    if (step.done) return step.value
  }
}

/** Whole percents, those next to a share first. */
function outward(share: number): number[] {
  return Array.from({ length: most - least + 1 }, (_, i) => (least + i) / 100).sort(
    (a, b) => Math.abs(a - share) - Math.abs(b - share),
  )
}
