import { describe, expect, it } from 'vitest'
import type { LinearProgram, Optimal } from '../../src/engine/lp/solver'
import { isSound, soundnessOf } from '../../src/engine/lp/soundness'
import { DualProblem } from '../../src/solvers/dualProblem'
import { glpkSolver } from '../../src/solvers/glpk'
import { quietGlpk } from '../../src/solvers/quietGlpk'
import { Random } from '../second/random'
import { problems } from './problems'
import { randomProgram } from './randomProgram'

const solver = await glpkSolver()
const { calls } = await quietGlpk()
if (!calls) throw new Error('the package exports other calls, or another version')

const optimal = (program: LinearProgram): Optimal => {
  const outcome = solver.solve(program, 10)
  if (outcome.kind !== 'optimal') throw new Error(JSON.stringify(outcome))
  return outcome
}

const answerOf = (problem: DualProblem): Optimal => {
  const answer = problem.solve(10)
  if (answer?.kind !== 'optimal') throw new Error(JSON.stringify(answer))
  return answer
}

const backFrom = (program: LinearProgram): Optimal => {
  const problem = new DualProblem(calls, program)
  const answer = answerOf(problem)
  problem.delete()
  return answer
}

const most = (a: readonly number[], b: readonly number[]) =>
  Math.max(0, ...a.map((value, i) => Math.abs(value - (b[i] ?? NaN))))

describe('the dual form', () => {
  it('comes back to the answer of the program itself, on 200 random programs', () => {
    const random = new Random(77)
    let same = 0
    for (let seed = 1; seed <= 200; seed++) {
      const { program, objective } = randomProgram(seed, random.whole(1, 10), random.whole(1, 25))
      const back = backFrom(program)
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
    const back = backFrom(problem.program)
    expect(back.objective).toBeCloseTo(problem.objective, 9)
    expect(isSound(soundnessOf(problem.program, back))).toBe(true)
    if (problem.columns) expect(most(problem.columns, back.columns)).toBeLessThan(1e-9)
    if (problem.duals) expect(most(problem.duals, back.duals)).toBeLessThan(1e-9)
  })

  it('has one row a column, and one column a finite side', () => {
    // x in [0, inf), y in [1, 4]; 2 <= x + y, x - y <= 3, 1 <= x <= 5: 4 sides of rows; x's zero
    // makes its row an inequality, y has two sides
    const { size } = new DualProblem(calls, {
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
    expect(size).toEqual({ rows: 2, columns: 4 + 2 })
  })

  it('follows programs that change by rows, costs and bounds to the objective of one made anew', () => {
    const random = new Random(78)
    let followed = 0
    for (let seed = 1; seed <= 100; seed++) {
      const { program } = randomProgram(seed, random.whole(2, 8), random.whole(12, 30))
      let now: LinearProgram = { ...program, rows: program.rows.slice(0, 8) }
      const problem = new DualProblem(calls, now)
      problem.solve(10)
      for (let turn = 8; turn < program.rows.length; turn += 2) {
        now = changed(now, program.rows.slice(turn, turn + 2), random)
        if (!problem.follow(now)) continue
        const fresh = new DualProblem(calls, now)
        const [there, anew] = [problem.solve(10), fresh.solve(10)]
        fresh.delete()
        expect(there?.kind, `seed ${seed}, ${turn} rows`).toBe(anew?.kind)
        if (there?.kind !== 'optimal' || anew?.kind !== 'optimal') continue
        followed++
        expect(isSound(soundnessOf(now, there)), `seed ${seed}`).toBe(true)
        const apart = Math.abs(there.objective - anew.objective)
        expect(apart / Math.max(1, Math.abs(anew.objective)), `seed ${seed}`).toBeLessThan(1e-9)
      }
      problem.delete()
    }
    expect(followed).toBeGreaterThan(200)
  })

  it('gives a row that stands twice its dual once', () => {
    const row = { terms: [[0, 1]] as const, lower: 3, upper: Infinity }
    const columns = [{ lower: 0, upper: Infinity }]
    const { duals } = backFrom({ columns, rows: [row, row], objective: [2] })
    expect(duals).toEqual([2, 0])
  })
})

/** A program with other rows at its end, now and then without its first one, with other costs or a wider column. */
function changed(
  { columns, rows, objective }: LinearProgram,
  more: LinearProgram['rows'],
  random: Random,
): LinearProgram {
  const way = random.whole(0, 3)
  return {
    columns:
      way === 1 ? columns.map((column) => ({ ...column, upper: column.upper + 1 })) : columns,
    rows: [...(way === 2 ? rows.slice(1) : rows), ...more],
    objective: way === 3 ? objective.map((cost) => cost * (1 + random.whole(0, 4))) : objective,
  }
}
