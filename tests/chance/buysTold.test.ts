import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { readTrain } from '../../src/document/readTrain'
import { PlanningRun } from '../../src/engine/planningRun'
import { glpkSolver } from '../../src/solvers/glpk'
import { sureParts } from '../../src/text/sureParts'
import type { Train } from '../second/train'

const example = new URL('../../examples/over-the-years.json', import.meta.url)

/** What is told of better work, and the chance of the plan once that is entered: usual values are 10 and 20 um. */
async function told(plan: Train['plan']) {
  const document = JSON.parse(readFileSync(example, 'utf8')) as Train
  const solver = await glpkSolver()
  const runOf = (sure: NonNullable<Train['plan']>['sure']) => {
    const asked = {
      ...document,
      plan: { ...document.plan, ...plan, sure: { ...sure, draws: 2000 } },
    }
    const read = readTrain(asked)
    if (!read.ok) throw new Error(JSON.stringify(read.refused))
    return new PlanningRun(read, solver)
  }
  const run = runOf({})
  const { plan: sure } = run.sureBeside([])
  const halved = sure.buys?.find(({ what }) => what === 'work')?.halved ?? NaN
  const entered = runOf({ shim: 0.005, slide: 0.01 }).sureBeside([]).plan.all?.chance ?? NaN
  return { words: sureParts(run.train, sure).buys.join(' '), halved, entered }
}

test('what better work adds comes of it when it is entered', async () => {
  const { words, halved, entered } = await told({ share: 0.9 })
  expect(entered).toBe(halved)
  expect(words).not.toContain('as it stands')
})

test('with a guard the plan is made anew with less room kept free, and that is said', async () => {
  const { words, halved, entered } = await told({ share: 0.9, guard: 0.5 })
  expect(halved - entered).toBeGreaterThan(0.02)
  expect(words).toContain('said of the plan as it stands')
})
