import { describe, expect, it } from 'vitest'
import { cleanDuals, reducedCosts } from '../../src/engine/proof/cleanDuals'
import { dualBound } from '../../src/engine/proof/dualBound'
import { Random } from '../second/random'
import { col, free, problems, row } from './problems'
import { exactBound } from './exactBound'
import { randomProgram } from './randomProgram'

/** Every point that the random programs were built around lies within this. */
const reach = 100

/** The bound added up in plain doubles. */
function plainBound(program: Parameters<typeof dualBound>[0], duals: readonly number[]): number {
  const y = cleanDuals(program, duals)
  const reduced = reducedCosts(program, y)
  const onRows = program.rows.reduce((sum, row, i) => {
    const dual = y[i] ?? 0
    return dual === 0 ? sum : sum + dual * (dual > 0 ? row.lower : row.upper)
  }, 0)
  return program.columns.reduce((sum, { lower, upper }, j) => {
    const d = reduced[j] ?? 0
    const side = d > 0 ? lower : upper
    return d === 0 ? sum : sum + d * (Number.isFinite(side) ? side : -Math.sign(d) * 1e4)
  }, onRows)
}

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

  it('keeps its digits where only a hair of a column stands in the row that bears it', () => {
    // min x0 where x0 + hair x1 >= 10, a free x1 that other rows keep within 1 and that no dual of the solver touches
    for (const hair of [1e-12, 1e-9, 1e-7]) {
      const rows = [
        row([1, hair], 10, Infinity),
        row([0, 1], -Infinity, 1),
        row([0, -1], -Infinity, 1),
        row([0, 3], -5, 5),
      ]
      const program = { columns: [col(), free], rows, objective: [1, 0] }
      const bound = dualBound(program, [1, 0, 0, 0], 1e8)
      expect(bound).toBeLessThanOrEqual(10 - hair)
      expect(bound).toBeGreaterThan(10 - 4 * hair - 1e-13)
    }
  })

  it('is never over the exact sum, and under it by last digits alone, also where large terms cancel', () => {
    const random = new Random(7)
    let over = 0
    for (let seed = 1; seed <= 200; seed++) {
      const { program, duals } = randomProgram(seed, random.whole(2, 9), random.whole(2, 20))
      const size = 10 ** random.whole(0, 9)
      const wide = program.rows.map((row) => ({
        ...row,
        lower: row.lower * size,
        upper: row.upper * size,
      }))
      const large = { ...program, rows: wide }
      const exact = exactBound(large, duals, 1e4)
      const bound = dualBound(large, duals, 1e4)
      expect(exact.isNotUnder(bound), `seed ${seed}`).toBe(true)
      expect(exact.value - bound).toBeLessThanOrEqual(4 * Number.EPSILON * Math.abs(bound) + 1e-15)
      if (!exact.isNotUnder(plainBound(large, duals))) over++
    }
    // the same added up as usual lies over it often
    expect(over).toBeGreaterThan(20)
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
    expect(dualBound(program, [-1], reach)).toBeCloseTo(0, 12)
    expect(dualBound(program, [1], reach)).toBeCloseTo(2, 12)
    // 0.4 of the row, and the rest of the cost on the column's own bound of 0
    expect(dualBound(program, [0.4], reach)).toBeCloseTo(0.8, 12)
  })

  it('lets a free column that duals leave a cost run to the reach', () => {
    // min x, x >= 2 by a row, x free: no dual explains the cost, so x is taken at -reach
    const program = { columns: [free], rows: [row([1], 2, Infinity)], objective: [1] }
    expect(dualBound(program, [0], reach)).toBeCloseTo(-reach, 12)
    expect(dualBound(program, [1], reach)).toBeCloseTo(2, 12)
  })
})
