import { describe, expect, it } from 'vitest'
import type { LinearProgram, Optimal, Solver } from '../../src/engine/lp/solver'
import { col, infeasible, problems, row, unbounded } from './problems'
import { randomProgram } from './randomProgram'

/** Seconds, far more than any of these programs takes. */
const time = 10

const good: LinearProgram = {
  columns: [col(), col()],
  rows: [row([1, 2], 4, Infinity), row([3, 1], 6, Infinity)],
  objective: [1, 1],
}

const malformed: readonly { name: string; program: LinearProgram }[] = [
  { name: 'a coefficient that is no number', program: { ...good, rows: [row([NaN, 1], 0, 1)] } },
  { name: 'a coefficient without end', program: { ...good, rows: [row([Infinity, 1], 0, 1)] } },
  { name: 'a cost that is no number', program: { ...good, objective: [NaN, 1] } },
  { name: 'a bound of a row that is no number', program: { ...good, rows: [row([1, 1], NaN, 1)] } },
  { name: 'a row with its bounds crossed', program: { ...good, rows: [row([1, 1], 2, 1)] } },
  { name: 'a column with its bounds crossed', program: { ...good, columns: [col(2, 1), col()] } },
  { name: 'a column above infinity', program: { ...good, columns: [col(Infinity), col()] } },
  {
    name: 'a column bound that is no number',
    program: { ...good, columns: [col(0, NaN), col()] },
  },
  {
    name: 'a column twice in a row',
    program: {
      ...good,
      rows: [
        {
          terms: [
            [0, 1],
            [0, 2],
          ],
          lower: 0,
          upper: 1,
        },
      ],
    },
  },
  {
    name: 'a column that does not exist',
    program: { ...good, rows: [{ terms: [[7, 1]], lower: 1, upper: 2 }] },
  },
]

/** What every solver behind the port must do; the planner relies on each of these. */
export function conformance(name: string, make: () => Promise<Solver>): void {
  describe(name, async () => {
    const solver = await make()
    const optimal = (program: LinearProgram): Optimal => {
      const outcome = solver.solve(program, time)
      if (outcome.kind !== 'optimal') throw new Error(JSON.stringify(outcome))
      return outcome
    }

    it.each(problems)('solves $name', ({ program, objective, columns, duals }) => {
      const answer = optimal(program)
      expect(answer.objective).toBeCloseTo(objective, 9)
      expect(answer.columns).toHaveLength(program.columns.length)
      expect(answer.duals).toHaveLength(program.rows.length)
      columns?.forEach((value, j) => {
        expect(answer.columns[j], `column ${j}`).toBeCloseTo(value, 9)
      })
      duals?.forEach((value, i) => {
        expect(answer.duals[i], `row ${i}`).toBeCloseTo(value, 9)
      })
      expect(unexplained(program, answer)).toBeLessThan(1e-9)
    })

    it.each(infeasible)('finds infeasible: $name', ({ program }) => {
      expect(solver.solve(program, time)).toEqual({ kind: 'infeasible' })
    })

    it.each(unbounded)('finds unbounded: $name', ({ program }) => {
      expect(solver.solve(program, time)).toEqual({ kind: 'unbounded' })
    })

    it.each(malformed)('stops at $name, says why, and works afterwards', ({ program }) => {
      const outcome = solver.solve(program, time)
      expect(outcome.kind).toBe('stopped')
      expect('why' in outcome ? outcome.why.length : 0).toBeGreaterThan(10)
      expect(optimal(good).objective).toBeCloseTo(2.8, 9)
    })

    it('stops when there is no time', () => {
      const outcome = solver.solve(randomProgram(1, 30, 60).program, 0)
      expect(outcome.kind).toBe('stopped')
    })

    it('answers the same program the same way, digit for digit', () => {
      const { program } = randomProgram(2, 12, 30)
      const first = JSON.stringify(optimal(program))
      optimal(randomProgram(3, 12, 8).program)
      expect(JSON.stringify(optimal(program))).toBe(first)
    })

    it('gives duals that are the change of the objective with the bound, by differences', () => {
      const step = 1e-5
      let [positive, negative] = [0, 0]
      for (let seed = 1; seed <= 24; seed++) {
        const { program } = randomProgram(seed, 5, seed % 2 === 0 ? 4 : 12)
        const answer = optimal(program)
        program.rows.forEach((bounded, i) => {
          const moved = (by: number) => {
            const { lower, upper } = bounded
            const shifted = { ...bounded, lower: lower + by, upper: upper + by }
            const outcome = solver.solve(
              { ...program, rows: program.rows.map((r, k) => (k === i ? shifted : r)) },
              time,
            )
            // beyond the last bound there is no point, and the objective is without end
            return outcome.kind === 'optimal' ? outcome.objective : Infinity
          }
          // the objective is convex in the bound: at a corner the dual lies between two slopes
          const below = (answer.objective - moved(-step)) / step
          const above = (moved(step) - answer.objective) / step
          const dual = answer.duals[i] ?? NaN
          expect(dual, `seed ${seed}, row ${i}`).toBeGreaterThan(below - 1e-4)
          expect(dual, `seed ${seed}, row ${i}`).toBeLessThan(above + 1e-4)
          if (dual > 1e-3 && above - below < 1e-3) positive++
          if (dual < -1e-3 && above - below < 1e-3) negative++
        })
      }
      expect(positive).toBeGreaterThan(10)
      expect(negative).toBeGreaterThan(10)
    })

    it.each([
      ['more columns than rows', 12, 6],
      ['more rows than columns', 6, 20],
    ])('solves random programs with %s to the point they were built around', (_, columns, rows) => {
      for (let seed = 1; seed <= 60; seed++) {
        const { program, objective } = randomProgram(seed, columns, rows)
        const answer = optimal(program)
        expect(Math.abs(answer.objective - objective), `seed ${seed}`).toBeLessThan(1e-7)
        expect(unexplained(program, answer), `seed ${seed}`).toBeLessThan(1e-7)
      }
    })
  })
}

/**
 * How far a point and its duals are from proving each other, written out anew: bounds kept, duals on
 * the side that binds, and no reduced cost where a column is away from its bounds.
 */
function unexplained(program: LinearProgram, { columns, duals }: Optimal): number {
  let most = 0
  const reduced = [...program.objective]
  const off = (dual: number, value: number, { lower, upper }: { lower: number; upper: number }) => {
    most = Math.max(most, lower - value, value - upper)
    if (dual > 0) most = Math.max(most, Math.min(dual, value - lower))
    if (dual < 0) most = Math.max(most, Math.min(-dual, upper - value))
  }
  program.rows.forEach((bounds, i) => {
    const dual = duals[i] ?? NaN
    let value = 0
    for (const [j, a] of bounds.terms) {
      value += a * (columns[j] ?? NaN)
      reduced[j] = (reduced[j] ?? NaN) - a * dual
    }
    off(dual, value, bounds)
  })
  program.columns.forEach((bounds, j) => {
    off(reduced[j] ?? NaN, columns[j] ?? NaN, bounds)
  })
  return most
}
