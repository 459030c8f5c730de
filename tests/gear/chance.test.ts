import { readFileSync } from 'node:fs'
import { beforeAll, describe, expect, it } from 'vitest'
import { readTrain } from '../../src/document/readTrain'
import { outsideTheModel, sureSentence } from '../../src/engine/chance/sentence'
import { PlanningRun } from '../../src/engine/planningRun'
import { PlanRun } from '../../src/engine/plan/planRun'
import type { Solver } from '../../src/engine/lp/solver'
import { glpkSolver } from '../../src/solvers/glpk'
import type { Train } from '../second/train'

let solver: Solver
beforeAll(async () => {
  solver = await glpkSolver()
})

const example = new URL('../../examples/gear-coupling.json', import.meta.url)

/** The example with another least angle and tolerance of its gear coupling (mrad), and what is asked of its plan. */
function runOf(least: number, flex: number, plan: Train['plan']): PlanningRun {
  const document = JSON.parse(readFileSync(example, 'utf8')) as Train
  for (const coupling of document.couplings) {
    coupling.gear = { ...coupling.gear, least }
    coupling.tolerance = { ...coupling.tolerance, flex }
  }
  document.plan = { ...document.plan, ...plan }
  const read = readTrain(document)
  if (!read.ok) throw new Error(JSON.stringify(read.refused))
  return new PlanningRun(read, solver)
}

describe('the chance of a plan that is kept off dead straight', () => {
  it.each([
    [0.15, 0.35, 0.88],
    [0.2, 0.4, 0.95],
  ])('least %f of %f mrad: %f is told as reached by the plan told alone', (least, flex, chance) => {
    const run = runOf(least, flex, { share: 0.7, sure: { chance } })
    const { all, wanted } = run.sure().plan
    expect(run.train.couplings[0]?.gear?.sides.length).toBeGreaterThan(0)
    expect(wanted?.reached).toBe((all?.chance ?? NaN) >= chance)
    expect(sureSentence(run.train, run.sure().plan)).not.toContain('rounded')
    expect(outsideTheModel(run.train)).toContain('teeth of gear couplings keep the least angle')
  })

  it('along the share begins with the plan itself, and every plan of it keeps the least', () => {
    const run = runOf(0.2, 0.4, { share: 0.9, sure: {} })
    const [first, ...closer] = run.along()
    expect(first?.all).toBe(run.sure().plan.all?.chance)
    expect(closer.length).toBeGreaterThan(5)
    for (const { share, cost } of closer.filter((_, i) => i % 10 === 0)) {
      const { plan } = run.train
      const at = new PlanRun({ ...run.train, plan: { ...plan, share } }, solver).plan()
      expect(at.status).toBe('planned')
      expect(at.teeth?.filter(({ planned }) => (planned?.size ?? 1) < 0.2 - 1e-6)).toEqual([])
      expect('cost' in at ? at.cost : NaN).toBeCloseTo(cost, 3)
    }
    for (const buy of run.sure().plan.buys ?? [])
      if (buy.what === 'a closer plan') expect(buy.cost).toBeGreaterThan(0)
  })
})
