import { expect, test } from 'vitest'
import { glpkSolver } from '../../src/solvers/glpk'
import { judge } from '../second/judge'
import { solveSecond } from '../second/solve'
import type { Plan } from '../second/train'
import { planTrain } from '../planned'
import { randomSureTrain } from '../second/randomSure'

const long = process.env.HOLDFAST_LONG === '1'
const trains = long ? 300 : 5

const asked: Record<string, Plan> = {
  'no guard': { guard: 0, worst: false },
  'a guard': { guard: 0.8 },
  'a guard beside a share': { guard: 0.3, share: 0.8 },
  'the worst of intervals': { worst: true },
  both: { guard: 0.5, worst: true },
}

test.each(Object.keys(asked))(`%s costs what it costs the second builder`, async (name) => {
  const solver = await glpkSolver()
  const wrong: string[] = []
  const counts: Record<string, number> = {}
  for (let seed = 1; seed <= trains; seed++) {
    const train = randomSureTrain(seed)
    train.plan = { ...train.plan, sure: undefined, share: 1, ...asked[name] }
    const second = await solveSecond(train)
    const first = planTrain(train, solver, { reasons: false, prices: false })
    if ('refused' in first) throw new Error(`seed ${seed} is refused`)
    counts[second.status] = (counts[second.status] ?? 0) + 1
    if (first.status !== second.status) {
      wrong.push(`seed ${seed}: ${first.status}, the second builder has ${second.status}`)
      continue
    }
    if (first.status !== 'planned') continue
    const cost = first.cost ?? NaN
    const near = (low: number) =>
      cost >= low * (1 - 2e-5) - 1e-5 && cost <= second.cost * (1 + 2e-5) + 1e-5
    if (!near(second.cost)) {
      // a bolt that already touches its hole goes far on the little by which a plan may pass a circle
      const { cost: low } = second.hasCircles ? await solveSecond(train, { loose: true }) : second
      counts.excused = (counts.excused ?? 0) + 1
      if (!near(low)) wrong.push(`seed ${seed}: costs ${cost}, the second builder ${second.cost}`)
    }
    const motions = Object.fromEntries((first.bodies ?? []).map(({ id, move }) => [id, move]))
    const { keptShare } = judge(train, motions)
    if (!(keptShare <= (train.plan.share ?? 1) + 1e-5))
      wrong.push(`seed ${seed}: uses ${keptShare} with what is to be kept free`)
  }
  expect(wrong).toEqual([])
  expect(counts.planned).toBeGreaterThan(trains / 5)
  expect(counts.excused ?? 0).toBeLessThan(2 + trains / 50)
})
