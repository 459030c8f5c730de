import { tol } from '../mechanics/tolerances'
import type { Train } from '../mechanics/train'
import { PlanRun } from './plan/planRun'
import { Budget } from './lp/budget'
import type { Solver } from './lp/solver'
import { tradeoffPlanner } from './studies/tradeoff/tradeoff'
import type { WantedAnswer } from './chance/answer'
import { chancesAt, sharesAlong } from './chanceAlong'
import { offStraight } from './offStraight'
import { ChanceStudy } from './chance/chanceStudy'

/** A train with the share at which its plan reaches a chance, and what came of asking for it. */
export interface TrainAtChance {
  readonly train: Train
  readonly wanted?: WantedAnswer
}

/**
 * The plan of least cost on the trade-off whose chance, done blind, reaches the one that the train asks for: the largest
 * share at or under the one asked for that does. Where none does, the share with the best chance, the cheapest of equals.
 * The plan at the share taken is made anew, as it will be shown, and judged itself.
 * @param work how many times the usual work it may take; where that runs out, the train as it is, `looked` false
 * @returns the train as it is where no chance is asked for, or where there is no plan at all
 */
export function atChance(train: Train, solver: Solver, work = 1): TrainAtChance {
  const budget = new Budget(solver, work * tol.planWork)
  const found = budget.attempt((within) => lookedFor(train, within))
  if (found) return found
  const { share, sure } = train.plan
  // without its end nothing is known of the chance but that it was not found
  const wanted = { chance: sure?.chance ?? 0, reached: false, share, asked: share }
  return { train, wanted: { ...wanted, looked: false } }
}

function lookedFor(train: Train, solver: Solver): TrainAtChance {
  const chance = train.plan.sure?.chance
  if (chance === undefined) return { train }
  const asked = train.plan.share
  const at = (share: number): Train => ({ ...train, plan: { ...train.plan, share, asked } })
  const kept = offStraight(train, solver, Infinity)
  const first = new PlanRun(kept, solver, { work: Infinity })
  const study = new ChanceStudy(train, first.found())
  const shown = (share: number): number | undefined => {
    const run =
      share === asked
        ? first
        : new PlanRun(offStraight(at(share), solver, Infinity), solver, { work: Infinity })
    const { status } = run.plan()
    if (status !== 'planned' && status !== 'in-tolerance') return undefined
    return study.good(study.judged(run.motions())).all / study.draws
  }
  const now = shown(asked)
  if (now === undefined) return { train }
  const wanted = (share: number, reached: boolean): TrainAtChance => ({
    train: at(share),
    wanted: { chance, reached, share, asked },
  })
  if (now >= chance) return wanted(asked, true)
  const planner = tradeoffPlanner(kept, solver)
  let best = { share: asked, all: now }
  if (planner)
    for (const { share, all } of chancesAt(
      study,
      planner,
      sharesAlong(asked, planner.curve).down,
    )) {
      if (all < chance && all <= best.all) continue
      const really = shown(share)
      if (really === undefined) continue
      if (really >= chance) return wanted(share, true)
      if (really > best.all) best = { share, all: really }
    }
  return wanted(best.share, false)
}
