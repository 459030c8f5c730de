import { expect, test } from 'vitest'
import { glpkSolver } from '../../src/solvers/glpk'
import { fourFeet, given } from '../second/pairs'
import { solveSecond } from '../second/solve'
import type { Train } from '../second/train'
import { planned } from './firstAnswer'

const solver = await glpkSolver()

/** Machines left and right of one that is dowelled, so that the two couplings share no motion. */
function bothSides(left: number, right: number): Train {
  const tolerance = { offset: 50, angle: 1 }
  const states = ['cold', 'hot'].map((id) => ({ id, name: id }))
  const shifted = (by: number) => fourFeet().map((foot) => ({ ...foot, x: foot.x + by }))
  const coupling = (id: string, machines: readonly [string, string], at: number, z: number) => ({
    id,
    left: { machine: machines[0], plane: at },
    right: { machine: machines[1], plane: at + 200 },
    tolerance,
    found: [{ ...given(0, z), at: at + 100 }],
  })
  return {
    format: 'holdfast-train',
    version: 1,
    name: 'both sides',
    units: { length: 'mm', fine: 'um' },
    clock: { seenFrom: 'left' },
    states,
    machines: [
      { id: 'L', name: 'Motor', axis: { z: 400 }, feet: shifted(-3000) },
      { id: 'A', name: 'Gear', axis: { z: 400 }, anchored: 'dowelled', feet: [] },
      {
        id: 'R',
        name: 'Pump',
        axis: { z: 400 },
        feet: shifted(0),
        growth: { hot: [{ at: 1000, rise: 20 }] },
      },
    ],
    couplings: [coupling('l', ['L', 'A'], -800, left), coupling('r', ['A', 'R'], 0, right)],
    plan: { share: 0.7 },
  }
}

test.each([
  ['one side 200 mm out, the other 0.3', 200_000, -300],
  ['both a little', 500, -300],
])('%s: equal costs are spent where the share is worst', async (_, left, right) => {
  const train = bothSides(left, right)
  const second = await solveSecond(train)
  const plan = planned(train, solver)
  if (plan.status !== 'planned') throw new Error(plan.status)
  const [least, most] = second.worstShareBand
  // by another builder and solver over the whole train; 2e-5 is what plans of equal cost agree by
  expect(plan.worstShare).toBeGreaterThanOrEqual(least * (1 - 2e-5))
  expect(plan.worstShare).toBeLessThanOrEqual(most * (1 + 2e-5))
  expect(plan.cost).toBeLessThanOrEqual(second.cost * (1 + 1e-6))
})
