import { firstRefusals, type Refusal } from '../document/refusal'
import { readTrainText } from '../document/readTrain'
import { everyStage, PlanningRun } from '../engine/planningRun'
import type { Solver } from '../engine/lp/solver'
import { answerJson } from '../json/answerJson'
import { harmlessJson } from '../language/harmless'
import { exitOf, refusedExit } from './exitStatus'
import type { EachTrain } from './manyArguments'
import type { FileText } from './readFile'

/** What `plan --json` answers for one train of many, and the exit status it would have alone. */
export interface TrainAnswer {
  readonly answer: object
  readonly exit: number
}

/** Plans one train of many; whatever is wrong with it becomes its answer. Never throws. */
export function trainAnswer(
  text: FileText,
  solver: Solver,
  { sure, work }: EachTrain,
): TrainAnswer {
  if (!text.ok) return refusedAnswer(text.refused)
  try {
    const read = readTrainText(text.text)
    if (!read.ok) return refusedAnswer(read.refused)
    const answer = new PlanningRun(read, solver, work).answer({ ...everyStage, sure })
    return { answer: answerJson(answer, read.train), exit: exitOf[answer.status] }
  } catch (error) {
    return stoppedAnswer(
      `the program failed: ${error instanceof Error ? error.message : String(error)}`,
    )
  }
}

export const refusedAnswer = (refused: readonly Refusal[]): TrainAnswer => ({
  answer: { refused: firstRefusals(refused) },
  exit: refusedExit,
})

export const stoppedAnswer = (why: string): TrainAnswer => ({
  answer: { status: 'stopped', why },
  exit: exitOf.stopped,
})

/** One line of JSON, with its line feed: whose answer it is, then the answer. */
export const answerLine = (whose: object, { answer }: TrainAnswer): string =>
  `${harmlessJson(JSON.stringify({ ...whose, ...answer }))}\n`
