import { describe, expect, it } from 'vitest'
import type { LinearProgram, Optimal } from '../../src/engine/lp/solver'
import { isSound, soundnessOf } from '../../src/engine/lp/soundness'
import { dualForm } from '../../src/solvers/dualForm'
import { glpkSolver } from '../../src/solvers/glpk'
import { Random } from '../second/random'
import { problems } from './problems'
import { randomProgram } from './randomProgram'

const solver = await glpkSolver()

const optimal = (program: LinearProgram): Optimal => {
  const outcome = solver.solve(program, 10)
  if (outcome.kind !== 'optimal') throw new Error(JSON.stringify(outcome))
  return outcome
}

const most = (a: readonly number[], b: readonly number[]) =>
  Math.max(0, ...a.map((value, i) => Math.abs(value - (b[i] ?? NaN))))

describe('the dual form', () => {
  it('comes back to the answer of the program itself, on 200 random programs', () => {
    const random = new Random(77)
    let same = 0
    for (let seed = 1; seed <= 200; seed++) {
      const { program, objective } = randomProgram(seed, random.whole(1, 10), random.whole(1, 25))
      const dual = dualForm(program)
      const back = dual.back(optimal(dual.program))
      const direct = optimal(program)
      expect(Math.abs(back.objective - objective), `seed ${seed}`).toBeLessThan(1e-7)
      expect(isSound(soundnessOf(program, back)), `seed ${seed}`).toBe(true)
      const apart = Math.max(
        most(back.columns, direct.columns),
        most(back.duals, direct.duals),
        Math.abs(back.objective - direct.objective),
      )
      if (apart < 1e-6) same++
    }
    // where several points or duals are right the two may take different ones
    expect(same).toBeGreaterThan(150)
  })

  it.each(problems)('comes back to the hand-worked answer: $name', (problem) => {
    const dual = dualForm(problem.program)
    const back = dual.back(optimal(dual.program))
    expect(back.objective).toBeCloseTo(problem.objective, 9)
    expect(isSound(soundnessOf(problem.program, back))).toBe(true)
    if (problem.columns) expect(most(problem.columns, back.columns)).toBeLessThan(1e-9)
    if (problem.duals) expect(most(problem.duals, back.duals)).toBeLessThan(1e-9)
  })

  it('has one row a column, and one column a finite side', () => {
    // x in [0, inf), y in [1, 4]; 2 <= x + y, x - y <= 3, 1 <= x <= 5: 4 sides of rows; x's zero
    // makes its row an inequality, y has two sides
    const { program } = dualForm({
      columns: [
        { lower: 0, upper: Infinity },
        { lower: 1, upper: 4 },
      ],
      rows: [
        {
          terms: [
            [0, 1],
            [1, 1],
          ],
          lower: 2,
          upper: Infinity,
        },
        {
          terms: [
            [0, 1],
            [1, -1],
          ],
          lower: -Infinity,
          upper: 3,
        },
        { terms: [[0, 1]], lower: 1, upper: 5 },
      ],
      objective: [7, 8],
    })
    expect(program.columns).toHaveLength(4 + 2)
    // in the order of the columns made: -2, +3, -1, +5 of the rows, then -1 and +4 of y
    expect(program.objective).toEqual([-2, 3, -1, 5, -1, 4])
    expect(program.rows.map(({ lower, upper }) => [lower, upper])).toEqual([
      [-Infinity, 7],
      [8, 8],
    ])
  })
})
