import { expect, test } from 'vitest'
import { glpkSolver } from '../../src/solvers/glpk'
import { holdsOf } from '../../src/engine/studies/holds/holdRows'
import { HoldSolver } from '../../src/engine/studies/holds/holdSolver'
import { PlanningRun } from '../../src/engine/planningRun'
import { readTrain } from '../../src/document/readTrain'
import { sureHolds } from '../../src/engine/sureHolds'
import { holdsJson } from '../../src/json/holdsJson'
import { holdsText } from '../../src/text/holdsText'
import { answerJson } from '../../src/json/answerJson'
import { exampleFile, read } from './choice'
import { longTrain } from './longTrain'

const solver = await glpkSolver()
const train = read(exampleFile('piped-compressor'))
const all = holdsOf(train, solver, { prices: false })

test('a list whose work runs out tells fewer choices, each as with all the work, and that it is not complete', () => {
  let [partial, last] = [0, 0]
  for (const work of [1e-6, 2e-5, 4e-5, 6e-5, 8e-5, 1e-4, 1.5e-4, 1]) {
    const some = holdsOf(train, solver, { prices: false, work })
    expect(some.rows.length).toBeGreaterThanOrEqual(last)
    last = some.rows.length
    expect(some.complete).toBe(some.ranOut === undefined)
    expect(some.complete).toBe(last === all.rows.length)
    for (const row of some.rows) {
      const same = all.rows.find(({ held }) => held.join() === row.held.join())
      const { held, status, cost, floor } = row
      expect({ held, status, cost, floor }).toEqual(
        same && { held: same.held, status: same.status, cost: same.cost, floor: same.floor },
      )
    }
    if (!some.ranOut) continue
    if (last > 0) partial++
    expect(holdsJson(some, train)).toMatchObject({ complete: false, unfinished: ['choices'] })
    const text = holdsText(train, some).replace(/\s+/g, ' ')
    expect(text).toContain('one that is not told may be better')
    expect(text).toContain('--work 10')
    expect(text).not.toMatch(/No choice of fixed machines reaches|All \d+ choices/)
  }
  expect(partial).toBeGreaterThan(1)
})

test('so does one of too many machines for all choices, and one with chances', () => {
  const long = read(longTrain(13))
  const some = holdsOf(long, solver, { prices: false, work: 1e-3 })
  expect(some).toMatchObject({ complete: false, ranOut: true })
  const sure = sureHolds(train, solver, { prices: false, work: 1e-4 })
  expect(sure).toMatchObject({ complete: false, ranOut: true })
  for (const { status } of sure.rows) expect(status).not.toBe('stopped')
})

test('a solver of choices without a budget never runs out', () => {
  expect(new HoldSolver(train, solver).budget.anew().attempt(() => [1])).toEqual([1])
})

test('closer plans that were not all looked at are told to be open, and the plan is told all the same', () => {
  const file = readTrain(exampleFile('bolt-bound-gearbox'))
  if (!file.ok) throw new Error(JSON.stringify(file.refused))
  const whole = answerJson(new PlanningRun(file, solver).answer({ sure: true }), file.train)
  expect(whole.unfinished).toBeUndefined()
  let open = 0
  for (const work of [1e-3, 2e-3, 5e-3]) {
    const some = answerJson(new PlanningRun(file, solver, work).answer({ sure: true }), file.train)
    if (some.status === 'stopped') continue
    expect('cost' in some && some.cost).toBe('cost' in whole && whole.cost)
    expect(some.sure?.all).toEqual(whole.sure?.all)
    if (some.unfinished?.includes('closer plans')) open++
  }
  expect(open).toBeGreaterThan(0)
})
