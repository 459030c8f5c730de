import { beforeAll, expect, test } from 'vitest'
import { glpkSolver } from '../../src/solvers/glpk'
import type { Solver } from '../../src/engine/lp/solver'
import { apartFromSecond, asFirst, planned } from '../agreement/firstAnswer'
import { asFirst as asFirstOfSecond, compare } from '../second/disagreements'
import { randomRotorTrain } from '../second/randomRotors'
import { solveSecond } from '../second/solve'
import { rotorTerms } from '../second/terms'
import type { Train } from '../second/train'

const long = process.env.HOLDFAST_LONG === '1'
const trains = long ? 400 : 40

let solver: Solver
beforeAll(async () => {
  solver = await glpkSolver()
})

/** Random trains with a gap somewhere. */
function* withGaps(): Generator<{ seed: number; train: Train }> {
  for (let seed = 1; ; seed++) {
    const train = randomRotorTrain(seed)
    if (train.couplings.some(({ axial }) => axial)) yield { seed, train }
  }
}

test(
  `planner and second builder agree on ${trains} random trains with rotors, half of them with a guard`,
  async () => {
    const binding = new Map<string, number>()
    const wrong: string[] = []
    const bind = () => (binding.get('coupling stretch') ?? 0) + (binding.get('rotor float') ?? 0)
    let count = 0
    for (const { seed, train } of withGaps()) {
      // of few trains too few may lean on them: more are asked until enough do
      if (count++ >= trains && (long || bind() >= trains / 20)) break
      const document =
        count % 2 === 0 ? { ...train, plan: { ...train.plan, guard: 1, worst: true } } : train
      const second = await solveSecond(document)
      const first = planned(document, solver)
      for (const text of await apartFromSecond(document, first, second))
        wrong.push(`seed ${seed}: ${text}`)
      for (const kind of second.binding) binding.set(kind, (binding.get(kind) ?? 0) + 1)
    }
    expect(wrong).toEqual([])
    // which of them bind is drawn; that each is noticed, the next test shows
    expect(bind(), 'they bind too seldom').toBeGreaterThanOrEqual(trains / 20)
  },
  long ? 1_800_000 : 300_000,
)

test('leaving out any of what rotors do makes the second builder disagree', async () => {
  const unnoticed: string[] = []
  for (const term of rotorTerms) {
    let seen = false
    for (const { seed, train } of withGaps()) {
      if (seen || seed > 200) break
      const whole = await solveSecond(train)
      const less = await solveSecond(train, { leaveOut: term })
      if (compare(asFirstOfSecond(whole), less).disagreements.length === 0) continue
      const first = asFirst(planned(train, solver))
      seen =
        compare(first, whole).disagreements.length === 0 &&
        compare(first, less).disagreements.length > 0
    }
    if (!seen) unnoticed.push(term)
  }
  expect(unnoticed).toEqual([])
}, 300_000)
