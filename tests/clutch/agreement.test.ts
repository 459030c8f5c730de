import { beforeAll, expect, test } from 'vitest'
import { glpkSolver } from '../../src/solvers/glpk'
import type { Solver } from '../../src/engine/lp/solver'
import { apartFromSecond, asFirst, judged, planned } from '../agreement/firstAnswer'
import { kept } from '../kept/kept'
import { compare } from '../second/disagreements'
import { randomClutchTrain } from '../second/randomClutch'
import { randomSureTrain } from '../second/randomSure'
import { solveSecond } from '../second/solve'
import { sampled } from '../second/sure/sampled'
import type { Train } from '../second/train'
import { plannedSure } from '../sure/sureAnswer'
import { isWhole } from '../counts'

const long = process.env.HOLDFAST_LONG === '1'
const trains = long ? 400 : 30

let solver: Solver
beforeAll(async () => {
  solver = await glpkSolver()
})

/** Random trains in which a clutch is open somewhere. */
function* withClutches(made?: (seed: number) => Train): Generator<{ seed: number; train: Train }> {
  for (let seed = 1; ; seed++) {
    const train = randomClutchTrain(seed, made)
    if (train.couplings.some(({ disengaged }) => disengaged)) yield { seed, train }
  }
}

test(
  `planner and second builder agree on ${trains} random trains with clutches, half of them with a guard`,
  async () => {
    const wrong: string[] = []
    let [count, noticed] = [0, 0]
    for (const { seed, train } of withClutches()) {
      if (count++ === trains) break
      const document =
        count % 2 === 0 ? { ...train, plan: { ...train.plan, guard: 1, worst: true } } : train
      const second = await solveSecond(document)
      const first = planned(document, solver)
      for (const text of await apartFromSecond(document, first, second))
        wrong.push(`seed ${seed}: ${text}`)
      const closed = await solveSecond(document, { leaveOut: 'open clutch' })
      if (compare(asFirst(first), closed).disagreements.length > 0) noticed += 1
    }
    expect(wrong).toEqual([])
    // a builder that judged open clutches too would be found out
    expect(noticed).toBeGreaterThan(trains / 4)
  },
  long ? 1_800_000 : 300_000,
)

test('of one cost, where a share hangs on its last digits, the planner reaches no larger one', async () => {
  const alone = kept('share-at-one-cost')
  const train = { ...alone, plan: { ...alone.plan, guard: 1, worst: true } }
  const [first, second] = [planned(train, solver), await solveSecond(train)]
  expect(judged(train, first)).toEqual([])
  expect(first.status).toBe(second.status)
  expect(Math.abs((first.cost ?? NaN) - second.cost)).toBeLessThan(1e-6 * second.cost)
  // 1.2e-5 apart, more than two answers usually may be, for 4e-7 of the cost
  expect(first.worstShare).toBeLessThan(second.worstShare + 2e-5)
  expect(first.worstShare).toBeGreaterThan(second.worstShare - 1e-4)
})

test.runIf(isWhole)(
  'the chance counts no clutch that is open: as a sampler of its own has it',
  () => {
    let compared = 0
    for (const { seed, train } of withClutches(randomSureTrain)) {
      if (compared === 2) break
      const { status, motions, sure } = plannedSure(train, solver)
      if (status !== 'planned' || !sure?.all) continue
      compared += 1
      const pairs = (sure.couplings ?? []).map(({ coupling, state }) => `${coupling} ${state}`)
      const judgedPairs = train.couplings.flatMap(({ id, disengaged = [] }) =>
        (train.states ?? []).flatMap((state) =>
          disengaged.includes(state.id) ? [] : [`${id} ${state.id}`],
        ),
      )
      expect(pairs).toEqual(judgedPairs)
      const ours = sampled(train, motions, { draws: 20_000, seed: 77 })
      // four standard deviations of 10,000 draws are 0.02
      expect(Math.abs(sure.all.chance - ours.all), `seed ${seed}`).toBeLessThan(0.025)
      expect(Math.abs(sure.asFound.chance - ours.asFound), `seed ${seed}`).toBeLessThan(0.025)
    }
  },
  300_000,
)
