import { describe, expect, it } from 'vitest'
import { isSound, soundnessOf } from '../../src/engine/lp/soundness'
import type { LinearProgram, Optimal } from '../../src/engine/lp/solver'
import { col, row } from './problems'
import { randomProgram } from './randomProgram'

// min x + y, x + 2y >= 4, 3x + y >= 6: the point (1.6, 1.2), the duals (0.4, 0.2), both worth 2.8
const program: LinearProgram = {
  columns: [col(), col(0, 5)],
  rows: [row([1, 2], 4, Infinity), row([3, 1], 6, Infinity)],
  objective: [1, 1],
}
const right: Optimal = {
  kind: 'optimal',
  objective: 2.8,
  columns: [1.6, 1.2],
  duals: [0.4, 0.2],
}

const judged = (change: Partial<Optimal>) => soundnessOf(program, { ...right, ...change })

describe('soundness of an answer', () => {
  it('takes the right one', () => {
    const { violation, gap } = judged({})
    expect(violation).toBeLessThan(1e-12)
    expect(gap).toBeLessThan(1e-12)
    expect(isSound(judged({}))).toBe(true)
  })

  it('takes every answer that random programs were built around', () => {
    for (let seed = 1; seed <= 50; seed++) {
      const { program: random, objective, columns, duals } = randomProgram(seed, 8, 15)
      const answer: Optimal = { kind: 'optimal', objective, columns, duals }
      expect(isSound(soundnessOf(random, answer)), `seed ${seed}`).toBe(true)
    }
  })

  it('measures how far a row is passed', () => {
    // x + 2y = 3.9 against 4: by 0.1 of 4
    expect(judged({ columns: [1.5, 1.2] }).violation).toBeGreaterThan(0.02)
    // 3x + y = 5.7 against 6: by 0.3 of 6, the larger part
    expect(judged({ columns: [1.5, 1.2] }).violation).toBeCloseTo(0.05, 9)
  })

  it('measures how far point and duals are apart', () => {
    // (2, 2) keeps all and costs 4, of which the duals explain 2.8
    expect(judged({ columns: [2, 2] }).violation).toBe(0)
    expect(judged({ columns: [2, 2] }).gap).toBeCloseTo(1.2 / 4, 9)
  })

  it.each<[string, Partial<Optimal>]>([
    ['a row passed by a little', { columns: [1.6 - 1e-5, 1.2] }],
    ['a column below its bound', { columns: [-0.1, 6.3] }],
    ['a column above its bound', { columns: [0, 6] }],
    ['a point that costs more', { columns: [1.61, 1.2] }],
    ['duals of nothing', { duals: [0, 0] }],
    ['duals that promise too much', { duals: [0.5, 0.2] }],
    ['duals with their sign turned', { duals: [-0.4, -0.2] }],
    ['duals changed over', { duals: [0.2, 0.4] }],
    ['no duals', { duals: [] }],
    ['no point', { columns: [] }],
    ['half a point', { columns: [1.6] }],
    ['a point that is no number', { columns: [NaN, 1.2] }],
    ['duals that are no numbers', { duals: [0.4, NaN] }],
    ['a point without end', { columns: [Infinity, 1.2] }],
  ])('does not take %s', (_, change) => {
    expect(isSound(judged(change))).toBe(false)
  })

  it('does not take a point that could still come down where a column has no bound', () => {
    // min -x, x <= 5 by a row: x = 1 keeps it, and no dual is owed for what is left
    const open = { columns: [col()], rows: [row([1], -Infinity, 5)], objective: [-1] }
    const at = (x: number, dual: number) =>
      soundnessOf(open, { kind: 'optimal', objective: -x, columns: [x], duals: [dual] })
    expect(isSound(at(5, -1))).toBe(true)
    expect(at(1, 0).stray).toBe(1)
    expect(isSound(at(1, 0))).toBe(false)
    // a dual toward the side of the row that has no bound
    expect(isSound(at(5, 1))).toBe(false)
    // against costs of a thousand a reduced cost of 1e-4 is rounding, one of 1e-2 is not
    const dear = { ...open, objective: [-1000] }
    const off = (dual: number) =>
      soundnessOf(dear, { kind: 'optimal', objective: -5000, columns: [5], duals: [dual] })
    expect(isSound(off(-1000 + 1e-4))).toBe(true)
    expect(isSound(off(-1000 + 1e-2))).toBe(false)
  })

  it('does not go by what the solver says the objective is', () => {
    expect(judged({ objective: 1 })).toEqual(judged({}))
  })
})
