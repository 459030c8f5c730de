import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { glpkSolver } from '../../src/solvers/glpk'
import { randomRotorTrain } from '../second/randomRotors'
import { randomSureTrain } from '../second/randomSure'
import { sampled } from '../second/sure/sampled'
import type { Train } from '../second/train'
import { plannedSure } from '../sure/sureAnswer'
import { isWhole } from '../counts'

/** The example and the first random trains with rotors that have a plan. */
function* planned(): Generator<Train> {
  const example = JSON.parse(readFileSync('examples/endwise.json', 'utf8')) as Train
  yield { ...example, plan: { ...example.plan, sure: {} } }
  for (let seed = 1; ; seed++) {
    const train = randomRotorTrain(seed, randomSureTrain)
    if (train.couplings.some(({ axial }) => axial)) yield train
  }
}

test.runIf(isWhole)(
  'the chance counts stretch and rotors, as a sampler of its own has it',
  async () => {
    const solver = await glpkSolver()
    let compared = 0
    for (const train of planned()) {
      if (compared === 3) break
      const { status, motions, sure } = plannedSure(train, solver)
      if (status !== 'planned' || !sure?.all) continue
      compared += 1
      const ours = sampled(train, motions, { draws: 20_000, seed: 77 })
      // four standard deviations of 10,000 draws are 0.02
      expect(Math.abs(sure.all.chance - ours.all), train.name).toBeLessThan(0.025)
      expect(Math.abs(sure.asFound.chance - ours.asFound), train.name).toBeLessThan(0.025)
      for (const { coupling, state, chance } of ours.couplings) {
        const theirs = sure.couplings?.find((c) => c.coupling === coupling && c.state === state)
        expect(Math.abs((theirs?.chance ?? NaN) - chance), coupling).toBeLessThan(0.025)
      }
    }
  },
  300_000,
)
