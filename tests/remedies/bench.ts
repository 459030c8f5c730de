import { planRead, withReasons } from '../planned'
import type { PlanAnswer } from '../../src/engine/work/answer'
import type { Remedy } from '../../src/engine/infeasible/remedies/answer'
import { readTrain } from '../../src/document/readTrain'
import type { TrainDocument } from '../../src/document/schema'
import { glpkSolver } from '../../src/solvers/glpk'

export const solver = await glpkSolver()

export function readOf(document: unknown) {
  const read = readTrain(JSON.parse(JSON.stringify(document)))
  if (!read.ok) throw new Error(JSON.stringify(read.refused))
  return read
}

/** An impossible train with its reasons; one that can be planned fails the test. */
export function reasonsOf(
  document: unknown,
): PlanAnswer & { remedies: Remedy[]; document: TrainDocument } {
  const read = readOf(document)
  const answer = withReasons(read, planRead(read.train, solver), solver)
  if (answer.status !== 'impossible' || !answer.remedies)
    throw new Error(`${read.train.name} is ${answer.status}`)
  return { ...answer, remedies: answer.remedies, document: read.document }
}

/** The plan of a document, without reasons. */
export const planOf = (document: unknown): PlanAnswer => planRead(readOf(document).train, solver)
