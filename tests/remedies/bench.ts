import { planRead, withReasons } from '../planned'
import { answerJson, type AnswerJson } from '../../src/json/answerJson'
import type { RemedyJson } from '../../src/json/reasonsJson'
import { readTrain } from '../../src/document/readTrain'
import type { TrainDocument } from '../../src/document/schema'
import { glpkSolver } from '../../src/solvers/glpk'

const solver = await glpkSolver()

export function readOf(document: unknown) {
  const read = readTrain(JSON.parse(JSON.stringify(document)))
  if (!read.ok) throw new Error(JSON.stringify(read.refused))
  return read
}

/** An impossible train with its reasons, as a program reads them; one that can be planned fails the test. */
export function reasonsOf(
  document: unknown,
): AnswerJson & { remedies: RemedyJson[]; document: TrainDocument } {
  const read = readOf(document)
  const told = withReasons(read, planRead(read.train, solver), solver)
  const answer = answerJson(told, read.train)
  if (answer.status !== 'impossible' || !answer.remedies)
    throw new Error(`${read.train.name} is ${answer.status}`)
  return { ...answer, remedies: answer.remedies, document: read.document }
}

/** The plan of a document, without reasons. */
export function planOf(document: unknown): AnswerJson {
  const { train } = readOf(document)
  return answerJson(planRead(train, solver), train)
}
