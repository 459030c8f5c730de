import { expect, it } from 'vitest'
import type { PlanAnswer } from '../../src/engine/fieldwork/answer'
import { hasMoves } from '../../src/engine/plan/moves'
import { planRead } from '../planned'
import type { TrainDocument } from '../../src/document/schema'
import type { Train } from '../../src/mechanics/train'
import { glpkSolver } from '../../src/solvers/glpk'
import { ShareSweepPlanner } from '../../src/worker/shareSweep'
import { alongKey, sameButShare } from '../../src/worker/shareSweepKey'
import { exampleFile, read } from '../holds/choice'
import { isWhole } from '../counts'

const solver = await glpkSolver()
const along = new ShareSweepPlanner()
const document = exampleFile('bolt-bound-gearbox') as object
const train = read(document)
const at = (share: number): Train => ({ ...train, plan: { ...train.plan, share } })

it('the share asked for is no part of the key, everything else is', () => {
  const plan = { ...('plan' in document ? (document.plan as object) : {}) }
  expect(alongKey({ ...document, plan: { ...plan, share: 0.91 } })).toBe(alongKey(document))
  expect(alongKey({ ...document, plan: { ...plan, reserve: 5 } })).not.toBe(alongKey(document))
})

it('documents that differ in the share alone are told without their keys', () => {
  const whole = exampleFile('bolt-bound-gearbox') as TrainDocument
  const planned = (change: object) => ({ ...whole, plan: { ...whole.plan, ...change } })
  expect(sameButShare(whole, planned({ share: 0.91 }))).toBe(true)
  for (const other of [planned({ reserve: 5 }), { ...whole, name: 'another' }]) {
    expect(sameButShare(whole, other)).toBe(false)
    expect(alongKey(other)).not.toBe(alongKey(whole))
  }
})

it.runIf(isWhole)(
  'plans made ahead, one a percent and the nearest first, are those of the planner',
  async () => {
    const made: { share: number; answer: PlanAnswer }[] = []
    await along.ready(
      alongKey(document),
      train,
      solver,
      () => Promise.resolve(true),
      ({ plan }, answer) => made.push({ share: plan.share, answer }),
    )
    expect(made.map(({ share }) => share).sort()).toEqual(
      Array.from({ length: 71 }, (_, i) => (30 + i) / 100),
    )
    expect(made[0]?.share).toBe(train.plan.share)
    for (const { share, answer } of made) {
      const plain = planRead(at(share), solver, { prices: false })
      expect([answer.status, answer.share], `${share}`).toEqual([plain.status, share])
      expect(answer.floor).toBeCloseTo(plain.floor ?? NaN, 6)
      if (!hasMoves(plain)) continue
      if (!hasMoves(answer)) throw new Error(answer.status)
      expect(Math.abs(answer.cost / plain.cost - 1)).toBeLessThan(2e-5)
      // proven like every plan: measured again, against a bound of its own
      expect(answer.proof.gap).toBeLessThanOrEqual(2e-5 * plain.cost)
    }
    expect(along.plan(alongKey(document), at(0.8), solver)).toBe(
      made.find(({ share }) => share === 0.8)?.answer,
    )
  },
)

it('another train is planned anew, without what was made ahead', () => {
  const answer = along.plan('another', at(0.8), solver)
  expect(answer.status).toBe('planned')
  expect(answer).toEqual(planRead(at(0.8), solver, { prices: false }))
})
