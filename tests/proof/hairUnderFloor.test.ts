import { expect, test } from 'vitest'
import { glpkSolver } from '../../src/solvers/glpk'
import { randomTrain } from '../second/randomTrain'
import { readOf } from '../remedies/bench'
import { PlanningRun } from '../../src/engine/planningRun'

const solver = await glpkSolver()
const long = process.env.HOLDFAST_LONG === '1'
const trains = long ? 40 : 2

/** What the share asked for is, beside the least share that any move reaches. */
const under = [2e-6, 1.1e-6, 1e-6, 9e-7, 6e-7, 4e-7, 1e-7, 1e-8, 1e-9, 0, -1e-9, -1e-7, -1e-6]

/** The rule of `tol.overFloor`. */
const most = 5e-7

test(`a share a hair under or over the least is planned or impossible by one rule, on ${trains} random trains`, () => {
  const wrong: string[] = []
  let [told, seed] = [0, 40_000]
  for (; told < trains; seed++) {
    const document = randomTrain(seed)
    const least = new PlanningRun(readOf(document), solver).plan().floor
    if (least === null || least < 0.05 || least > 0.98) continue
    told += 1
    for (const hair of under) {
      const share = least - hair
      const run = new PlanningRun(
        readOf({ ...document, plan: { ...document.plan, share } }),
        solver,
      )
      const plan = run.plan()
      const wanted = hair > most ? ['impossible'] : ['planned', 'in-tolerance']
      if (!wanted.includes(plan.status))
        wrong.push(`seed ${seed}, ${hair} under: ${plan.status} ${'why' in plan ? plan.why : ''}`)
      if (plan.status === 'impossible' && run.reasons()?.conflicts.length === 0)
        wrong.push(`seed ${seed}, ${hair} under: no reason`)
    }
  }
  expect(wrong).toEqual([])
}, 3_600_000)
