import { describe, expect, it } from 'vitest'
import { dualBound } from '../../src/engine/proof/dualBound'
import { Random } from '../second/random'
import { col, free, problems, row } from './problems'
import { randomProgram } from './randomProgram'

/** Every point that the random programs were built around lies within this. */
const reach = 100

describe('the bound from duals', () => {
  it('is the optimum for the duals of hand-worked problems', () => {
    for (const { name, program, objective, duals } of problems)
      if (duals) expect(dualBound(program, duals, reach), name).toBeCloseTo(objective, 9)
  })

  it('never lies above the optimum, whatever the duals, and reaches it for the true ones', () => {
    const random = new Random(5)
    let [close, far] = [0, 0]
    for (let seed = 1; seed <= 150; seed++) {
      const { program, objective, duals } = randomProgram(
        seed,
        random.whole(2, 9),
        random.whole(2, 20),
      )
      const slack = 1e-9 * Math.max(1, Math.abs(objective))
      const bound = (y: readonly number[]) => dualBound(program, y, reach)
      expect(Math.abs(bound(duals) - objective), `seed ${seed}`).toBeLessThan(1e-7)
      for (const size of [1e-9, 1e-6, 1e-3, 0.1, 3]) {
        const moved = duals.map((dual) => dual + random.about(size))
        const scaled = duals.map((dual) => dual * (1 + random.about(size)))
        const turned = duals.map((dual) => (random.chance(0.5) ? dual : -dual))
        for (const y of [moved, scaled, turned])
          expect(bound(y), `seed ${seed}, ${size}`).toBeLessThanOrEqual(objective + slack)
        if (size <= 1e-6 && bound(moved) > objective - 1e-3) close++
        if (size > 1 && bound(moved) < objective - 1e-3) far++
      }
      expect(bound([])).toBeLessThanOrEqual(objective + slack)
    }
    expect(close).toBeGreaterThan(200)
    expect(far).toBeGreaterThan(100)
  })

  it('keeps the optimum when duals carry the last digits of a solver', () => {
    const random = new Random(6)
    let within = 0
    for (let seed = 1; seed <= 100; seed++) {
      const { program, objective, duals } = randomProgram(seed, 6, 15)
      const rounded = duals.map((dual) => (dual === 0 ? 0 : dual * (1 + random.about(1e-9))))
      const lost = objective - dualBound(program, rounded, 1e4)
      if (lost < 1e-6 * Math.max(1, Math.abs(objective))) within++
    }
    expect(within).toBeGreaterThan(90)
  })

  it('drops a dual toward a side that has no bound', () => {
    // min x, x >= 2 by a row: a dual of -1 would need an upper bound; without it x >= 0 is left
    const program = { columns: [col()], rows: [row([1], 2, Infinity)], objective: [1] }
    expect(dualBound(program, [-1], reach)).toBe(0)
    expect(dualBound(program, [1], reach)).toBe(2)
    // 0.4 of the row, and the rest of the cost on the column's own bound of 0
    expect(dualBound(program, [0.4], reach)).toBeCloseTo(0.8, 12)
  })

  it('lets a free column that duals leave a cost run to the reach', () => {
    // min x, x >= 2 by a row, x free: no dual explains the cost, so x is taken at -reach
    const program = { columns: [free], rows: [row([1], 2, Infinity)], objective: [1] }
    expect(dualBound(program, [0], reach)).toBe(-reach)
    expect(dualBound(program, [1], reach)).toBe(2)
  })
})
