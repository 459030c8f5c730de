import { expect, test } from 'vitest'
import { planTrain } from '../planned'
import { glpkSolver } from '../../src/solvers/glpk'
import { kept } from '../kept/kept'
import { fineFactor } from '../second/train'
import { contractFaults } from './contract'
import { MixedShims } from './mixedShims'
import type { Shimmed } from './shimmed'

const solver = await glpkSolver()

/**
 * Trains on which leaving moves under 20 um alone is dear: by 7 %, by 27 % and by 25 times. What they
 * come to at best is said by a mixed-integer program in another solver, on rows of the second builder.
 */
test.each(['small-moves-1', 'small-moves-2', 'small-moves-3'])(
  'small moves are told where leaving them alone is dear: %s',
  async (name) => {
    const train = kept(name) as Shimmed
    const answer = planTrain(train, solver, { reasons: false, prices: false, packs: true })
    if ('refused' in answer || !answer.rounded) throw new Error('not rounded')
    const { rounded, share } = answer
    const fine = fineFactor(train)
    const cost = (rounded.cost ?? NaN) * fine
    expect(contractFaults(train, answer)).toEqual([])
    expect(rounded.status).toBe('rounded')
    const best = async (least: number, most: number) => {
      const mixed = await new MixedShims(train, { share, most, least }).solve()
      if (mixed.kind !== 'found') throw new Error(mixed.kind)
      return mixed.cost
    }
    const told = await best(0, 2 * cost + 1)
    expect(cost).toBeLessThan(1.02 * told)
    expect((rounded.bound ?? NaN) * fine).toBeLessThan(told + 0.05 + 1e-4 * told)
    const alone = (rounded.ways?.alone ?? NaN) * fine
    expect(alone).toBeGreaterThan(1.05 * cost)
    expect(alone).toBeCloseTo(await best(20, alone * 1.1), 0)
    expect((rounded.small ?? []).length).toBeGreaterThan(0)
  },
)
