import type { TrainDocument } from '../src/document/schema'
import type { Refusal } from '../src/document/refusal'
import { answerJson, type AnswerJson } from '../src/json/answerJson'
import { readTrain } from '../src/document/readTrain'
import type { Solver } from '../src/engine/lp/solver'
import { PlanRun } from '../src/engine/plan/planRun'
import { PlanningRun, type ReadTrain } from '../src/engine/planningRun'
import { roundedAnswer } from '../src/engine/rounding/roundedAnswer'
import { withStages, type PlanAnswer, type PlannedWithStages } from '../src/engine/fieldwork/answer'
import type { StepsAnswer } from '../src/engine/fieldwork/steps/answer'
import type { PlanFigures } from '../src/engine/plan/answer'
import { orderFor } from '../src/engine/fieldwork/orderFor'
import type { Train } from '../src/mechanics/train'
import { asFound } from '../src/mechanics/readings/asFound'

interface Stages {
  readonly reasons?: boolean
  readonly prices?: boolean
  readonly packs?: boolean
}

/** A document planned as the command line does it, in its own units, or why it is refused. */
export function planTrain(
  input: unknown,
  solver: Solver,
  { reasons = true, prices = true, packs = prices }: Stages = {},
): AnswerJson | { refused: readonly Refusal[] } {
  const read = readTrain(input)
  if (!read.ok) return { refused: read.refused }
  return answerJson(wholeAnswer(read, solver, { reasons, prices, packs }), read.train)
}

/** A train that was read, planned as the command line does it, in engine units. */
export function wholeAnswer(
  read: ReadTrain,
  solver: Solver,
  { reasons = true, prices = true, packs = prices }: Stages = {},
): PlanAnswer {
  return new PlanningRun(read, solver).answer({ reasons, prices, rounding: packs, work: true })
}

/** The plan alone of a train that may have no document, in engine units: neither reasons nor an order of work. */
export function planRead(
  train: Train,
  solver: Solver,
  { prices = true, packs = prices }: Omit<Stages, 'reasons'> = {},
): PlanAnswer {
  const run = new PlanRun(train, solver)
  const plan = prices ? run.priced() : run.plan()
  const solved = run.solved()
  if (!packs || solved.status !== 'planned' || plan.status !== 'planned') return plan
  const { share } = solved.least
  const rounded = roundedAnswer(train, run.found(), plan, run.motions(), share, solver)
  return withStages(plan, { rounded })
}

/** An answer that must be a plan; any other fails the test. */
export function mustPlan(answer: PlanAnswer): PlannedWithStages {
  if (answer.status !== 'planned') throw new Error(`${answer.name} is ${answer.status}`)
  return answer
}

/** An answer with what an impossible train's run says of its reasons. */
export const withReasons = (read: ReadTrain, answer: PlanFigures, solver: Solver): PlanAnswer =>
  withStages(answer, { reasons: new PlanningRun(read, solver).reasons() })

/** The order of work of an answer; none without moves. */
export const stepsFor = (
  { document, train }: { readonly document: TrainDocument; readonly train: Train },
  answer: PlanAnswer,
): StepsAnswer | undefined => orderFor({ document, train }, train.couplings.map(asFound), answer)
