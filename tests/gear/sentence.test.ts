import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { readTrain } from '../../src/document/readTrain'
import type { TrainDocument } from '../../src/document/schema'
import { PlanningRun } from '../../src/engine/planningRun'
import { sentenceOf } from '../../src/engine/plan/sentence'
import { glpkSolver } from '../../src/solvers/glpk'

const solver = await glpkSolver()

function sentenceAt(share: number) {
  const document = JSON.parse(readFileSync('examples/gear-coupling.json', 'utf8')) as TrainDocument
  const read = readTrain({ ...document, plan: { ...document.plan, share } })
  if (!read.ok) throw new Error(JSON.stringify(read.refused))
  const run = new PlanningRun(read, solver)
  return sentenceOf(run.train, run.plan())
}

test('where teeth are moved off dead straight the sentence says why one moves', () => {
  expect(sentenceAt(0.7).moves).toContain(
    'As found the teeth of motor to blower run straighter than their least angle.',
  )
})

test('nothing is said to be well where no plan keeps the teeth at their least angle', () => {
  const { headline, moves } = sentenceAt(0.3)
  expect(headline).toBe('Nothing is moved, though gear couplings run too straight.')
  expect(moves).toContain(
    'No plan was found in which the teeth of motor to blower keep their least angle within that',
  )
})
