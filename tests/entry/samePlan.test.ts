import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { samePlan } from '../../src/app/stores/jobState'
import { planTrain } from '../planned'
import type { TrainDocument } from '../../src/document/schema'
import { glpkSolver } from '../../src/solvers/glpk'

const text = readFileSync(new URL('../../examples/pump-and-motor.json', import.meta.url), 'utf8')
const train = JSON.parse(text) as TrainDocument

test('what is planned anew is what a plan depends on: neither notes, nor the site, nor the record', async () => {
  const beside = { ...train, note: 'by night', site: 'hall 2', record: { order: ['a'] } }
  expect(samePlan(train, beside)).toBe(true)
  for (const other of [
    { ...train, name: 'another' },
    { ...train, plan: { ...train.plan } },
    { ...train, machines: [...train.machines] },
  ])
    expect(samePlan(train, other)).toBe(false)
  const solver = await glpkSolver()
  const answers = [train, { ...beside, record: undefined }].map((one) =>
    JSON.stringify(planTrain(one, solver, { reasons: false, prices: false })),
  )
  expect(answers[1]).toBe(answers[0])
})
