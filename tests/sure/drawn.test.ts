import { expect, test } from 'vitest'
import { glpkSolver } from '../../src/solvers/glpk'
import { plannedSure } from './sureAnswer'
import { randomSureTrain } from '../second/randomSure'

/** The bounds of a fraction by Wilson, J. Am. Stat. Assoc. 22, 1927, p. 209 (from memory), at 95 %. */
function wilson(fraction: number, draws: number): [number, number] {
  const z = 1.959963984540054
  const middle = fraction + z ** 2 / (2 * draws)
  const half = z * Math.sqrt((fraction * (1 - fraction)) / draws + z ** 2 / (4 * draws ** 2))
  return [(middle - half) / (1 + z ** 2 / draws), (middle + half) / (1 + z ** 2 / draws)]
}

test('every chance stands between the bounds of its sampling, and says how it was drawn', async () => {
  const solver = await glpkSolver()
  for (const [seed, draws] of [
    [4, 500],
    [7, 3000],
  ] as const) {
    const train = randomSureTrain(seed)
    train.plan = { ...train.plan, sure: { ...train.plan?.sure, draws, seed: 99 } }
    const { sure } = plannedSure(train, solver)
    expect(sure).toMatchObject({ draws, seed: 99 })
    const chances = [sure?.all, sure?.reread, sure?.asFound, ...(sure?.bolts ? [sure.bolts] : [])]
    for (const chance of chances) {
      const [low, high] = wilson(chance?.chance ?? NaN, draws)
      expect(chance?.low).toBeCloseTo(low, 9)
      expect(chance?.high).toBeCloseTo(high, 9)
    }
    // the same draws again, and others from another seed
    expect(plannedSure(train, solver).sure).toEqual(sure)
    train.plan.sure = { ...train.plan.sure, seed: 100 }
    expect(plannedSure(train, solver).sure?.couplings).not.toEqual(sure?.couplings)
  }
})
