import type { LinearProgram, LpColumn, LpRow, Optimal } from '../engine/lp/solver'
import type { GlpkCalls } from './glpkCalls'
import { GlpkProblem, statuses } from './glpkProblem'

/** Columns of the dual, one for each finite side; 0 for a side without a bound. */
interface Sides {
  readonly lower: number
  readonly upper: number
  /** The question that it last stood in. */
  asked: number
}

/** Steps of the simplex allowed for each row of the dual, as large as its basis is: usual programs take one at most ... */
const stepsEach = 6
/** ... and the smallest ones some ten in all. */
const leastSteps = 400

/**
 * The dual of min c'x, lower <= Ax <= upper, l <= x <= u, in the solver's memory, written as a minimisation. The planner's
 * programs have many more rows (tangents) than columns, and the simplex works with a basis as large
 * as the rows are many: in the dual form the same steps cost a tenth.
 *
 * One dual variable stands for each finite side of a row and of a column's bound, and each original
 * column becomes the equation A'y + z = c. A lower bound of 0 turns the equation into A'y <= c.
 *
 * A row more is a column more here, which leaves the basis as good as it was: a program that grew by a few tangents is
 * solved from there in a few steps.
 */
export class DualProblem {
  private readonly problem: GlpkProblem
  private program: LinearProgram
  private readonly rows = new Map<LpRow, Sides>()
  private readonly bounds: readonly Sides[]
  private asked = 0
  private dualFirst = false

  constructor(calls: GlpkCalls, program: LinearProgram) {
    this.problem = new GlpkProblem(calls)
    this.program = program
    this.problem.addRows(program.columns.length)
    program.columns.forEach((column, j) => {
      this.equation(j, column, program.objective[j] ?? 0)
    })
    this.add(program.rows)
    this.bounds = program.columns.map(({ lower, upper }, j) =>
      this.sides({ terms: [[j, 1]], lower: lower === 0 ? -Infinity : lower, upper }),
    )
  }

  /** How large it is: equations, and variables. */
  get size(): { readonly rows: number; readonly columns: number } {
    return { rows: this.problem.rows, columns: this.problem.columns }
  }

  /**
   * Turns it into the dual of a program that differs little from the one before: in costs, in sizes of the columns' bounds,
   * in rows. Rows are told by their identity.
   * @returns false where it differs too much; nothing is changed then
   */
  follow(program: LinearProgram): boolean {
    if (!alike(this.program, program)) return false
    this.asked++
    let stale = 0
    let fresh = 0
    for (const row of program.rows) {
      const known = this.rows.get(row)
      if (known) known.asked = this.asked
      else fresh++
    }
    for (const { asked } of this.rows.values()) if (asked !== this.asked) stale++
    if (stale + fresh > program.rows.length / 2) return false
    this.dualFirst = false
    this.changeColumns(program)
    this.retire(stale)
    this.add(program.rows)
    this.program = program
    return true
  }

  /** @returns undefined where the simplex came to no end */
  solve(seconds: number): Optimal | { kind: 'infeasible' } | undefined {
    const { problem, program } = this
    const steps = leastSteps + stepsEach * problem.rows
    const status = problem.minimise(steps, seconds, this.dualFirst)
    if (status === statuses.unbounded) return { kind: 'infeasible' }
    if (status !== statuses.optimal) return undefined
    const repeats = this.rows.size < program.rows.length
    const value = (column: number) => (column > 0 ? problem.columnValue(column) : 0)
    return {
      kind: 'optimal',
      objective: -problem.objective(),
      // The dual is minimised with its sign turned, so its row duals are -x.
      columns: program.columns.map((_, j) => -problem.rowDual(j + 1)),
      duals: program.rows.map((row, i) => {
        const sides = this.rows.get(row)
        // a row that stands twice has its dual once
        if (!sides || (repeats && program.rows.indexOf(row) < i)) return 0
        return value(sides.lower) - value(sides.upper)
      }),
    }
  }

  delete(): void {
    this.problem.delete()
  }

  private equation(j: number, { lower }: LpColumn, cost: number): void {
    this.problem.boundRow(j + 1, lower === 0 ? -Infinity : cost, cost)
  }

  private add(rows: readonly LpRow[]): void {
    for (const row of rows) if (!this.rows.has(row)) this.rows.set(row, this.sides(row))
  }

  private sides({ terms, lower, upper }: LpRow): Sides {
    return {
      lower: this.side(terms, lower, 1),
      upper: this.side(terms, upper, -1),
      asked: this.asked,
    }
  }

  private side(terms: LpRow['terms'], bound: number, sign: 1 | -1): number {
    if (!Number.isFinite(bound)) return 0
    const column = this.problem.addColumn()
    this.problem.boundColumn(column, 0, Infinity)
    this.problem.setCost(column, -sign * bound)
    for (const term of terms) this.problem.addEntry(term[0] + 1, column, sign * term[1])
    return column
  }

  private changeColumns({ columns, objective }: LinearProgram): void {
    const before = this.program
    columns.forEach((column, j) => {
      const [cost, { lower, upper }] = [objective[j] ?? 0, column]
      const sides = this.bounds[j]
      if (cost !== before.objective[j]) {
        this.equation(j, column, cost)
        this.dualFirst = true
      }
      if (sides && sides.lower > 0) this.problem.setCost(sides.lower, -lower)
      if (sides && sides.upper > 0) this.problem.setCost(sides.upper, upper)
    })
  }

  /** Takes rows out that are asked no more: their variables stay at nothing, and nobody knows of them. */
  private retire(count: number): void {
    if (count === 0) return
    for (const [row, { lower, upper, asked }] of this.rows) {
      if (asked === this.asked) continue
      for (const column of [lower, upper]) if (column > 0) this.problem.boundColumn(column, 0, 0)
      this.rows.delete(row)
      this.dualFirst = true
    }
  }
}

/** True where two programs have columns with bounds of the same kinds, so that their duals have the same equations. */
const alike = (a: LinearProgram, b: LinearProgram): boolean =>
  a.columns.length === b.columns.length &&
  a.columns.every(({ lower, upper }, j) => {
    const other = b.columns[j]
    return (
      other !== undefined &&
      (lower === 0) === (other.lower === 0) &&
      Number.isFinite(lower) === Number.isFinite(other.lower) &&
      Number.isFinite(upper) === Number.isFinite(other.upper)
    )
  })
