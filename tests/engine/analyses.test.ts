import { expect, test } from 'vitest'
import { glpkSolver } from '../../src/solvers/glpk'
import { Analyses } from '../../src/worker/analysis'
import type { AnalysisReply } from '../../src/worker/analysisMessages'
import { studiedTrains } from '../../src/worker/studiedTrains'
import { exampleFile } from '../holds/choice'

const solver = await glpkSolver()

test('an older question that comes in later does not overtake the newer one', async () => {
  const told: AnalysisReply[] = []
  const analyses = new Analyses(studiedTrains)
  const ask = (id: number, example: string) =>
    analyses.analysis(
      { id, kind: 'analysis', document: exampleFile(example) as object, curve: true, work: 1 },
      solver,
      (reply) => told.push(reply),
    )
  await Promise.all([ask(2, 'pump-and-motor'), ask(1, 'piped-compressor')])
  const ended = told.flatMap((one) => (one.kind === 'holds' && one.finished ? [one.id] : []))
  expect(ended).toEqual([2])
  expect(told.some(({ id, kind }) => id === 2 && kind === 'curve')).toBe(true)
})

test('of work likewise', async () => {
  const told: AnalysisReply[] = []
  const analyses = new Analyses(studiedTrains)
  const ask = (id: number, example: string) =>
    analyses.analysis(
      { id, kind: 'work', document: exampleFile(example) as object, work: 1 },
      solver,
      (reply) => told.push(reply),
    )
  await Promise.all([ask(2, 'pump-and-motor'), ask(1, 'piped-compressor')])
  const ended = told.flatMap((one) => (one.kind === 'sure' && one.whole ? [one.id] : []))
  expect(ended).toEqual([2])
})
