import highsLoader, { type Highs, type Model } from 'highs'
import { sum, valueOf, type Affine } from './affine'
import { farthest } from './farthest'
import type { Circle, Program, Row } from './program'

const firstTangents = 8
const mostRounds = 80

/** What a solved stage gives: the columns, and the dual of every row (cuts included). */
export interface Solution {
  columns: Float64Array
  objective: number
  duals: Float64Array
}

let loaded: Promise<Highs> | undefined

/** The solver package, loaded once. */
export function loadSolver(): Promise<Highs> {
  loaded ??= highsLoader()
  return loaded
}

/** The half plane that touches a circle where the direction (ca, cb) points. */
function tangent(circle: Circle, ca: number, cb: number): Row {
  const expression = sum([1, circle.radius], [-ca, circle.a], [-cb, circle.b])
  const low = circle.reserve?.(ca, cb) ?? 0
  return { family: circle.family, also: circle.also, expression, low, high: Infinity }
}

/** One program kept in the solver while its objective, bounds and cuts change. */
export class Stages {
  readonly rows: Row[]
  private readonly model: Model

  constructor(
    private readonly highs: Highs,
    private readonly program: Program,
  ) {
    this.rows = [...program.rows]
    for (const circle of program.circles) {
      for (let k = 0; k < firstTangents; k++) {
        const angle = (2 * Math.PI * k) / firstTangents
        this.rows.push(tangent(circle, Math.cos(angle), Math.sin(angle)))
      }
    }
    this.model = this.create()
  }

  private create(): Model {
    const { program, rows, highs } = this
    const starts = [0]
    const indices: number[] = []
    const values: number[] = []
    for (const { expression } of rows) {
      for (const [index, value] of expression.by) {
        if (Math.abs(value) < 1e-13) continue
        indices.push(index)
        values.push(value)
      }
      starts.push(indices.length)
    }
    const numCols = program.cost.length
    const numRows = rows.length
    const model = highs.createModel({
      numCols,
      numRows,
      colCost: program.cost.map(() => 0),
      colLower: program.lower,
      colUpper: program.upper,
      rowLower: rows.map((r) => r.low - r.expression.constant),
      rowUpper: rows.map((r) => r.high - r.expression.constant),
      matrix: { format: 'csr', numRows, numCols, starts, indices, values },
    })
    model.options.set({
      output_flag: false,
      presolve: 'off',
      solver: 'simplex',
      primal_feasibility_tolerance: 1e-9,
      dual_feasibility_tolerance: 1e-9,
      time_limit: 20,
    })
    return model
  }

  /** Adds low <= expression <= high for the stages to come. */
  addRow(row: Row): void {
    const { expression } = row
    const entries = [...expression.by].filter(([, value]) => Math.abs(value) >= 1e-13)
    const low = row.low - expression.constant
    const high = row.high - expression.constant
    this.model.addRow(low, high, {
      indices: entries.map(([index]) => index),
      values: entries.map(([, value]) => value),
    })
    this.rows.push(row)
  }

  /** Most the worst share may be in the stages to come. */
  limitWorst(share: number): void {
    this.model.changeColBounds(this.program.worst, 0, share)
  }

  /** Least of one objective over the true circles; undefined when nothing meets the rows. */
  least(objective: Affine): Solution | undefined {
    this.program.cost.forEach((_, index) => {
      this.model.changeColCost(index, objective.by.get(index) ?? 0)
    })
    for (let round = 0; round < mostRounds; round++) {
      const columns = this.run()
      if (!columns) return undefined
      if (!this.cut(columns) || round === mostRounds - 1) {
        const { rowDual } = this.model.getSolution()
        return { columns, objective: valueOf(objective, columns), duals: rowDual }
      }
    }
    return undefined
  }

  private run(): Float64Array | undefined {
    const { modelStatus } = this.highs.constants
    // a warm basis that has gone bad is thrown away; where the simplex still gives up, presolve helps
    for (const attempt of ['as it is', 'anew', 'presolved'] as const) {
      if (attempt !== 'as it is') this.model.clearSolver()
      this.model.options.set({ presolve: attempt === 'presolved' ? 'on' : 'off' })
      try {
        this.model.run()
      } catch {
        continue
      }
      const status = this.model.getModelStatus()
      if (status === modelStatus.optimal) return this.model.getSolution().colValue
      if (status === modelStatus.infeasible && attempt !== 'as it is') return undefined
    }
    throw new Error(`the second solver stopped with status ${this.model.getModelStatus()}`)
  }

  /** Adds a tangent wherever the point lies past a circle; false when it lies past none. */
  private cut(columns: Float64Array): boolean {
    let cuts = 0
    for (const circle of this.program.circles) {
      const a = valueOf(circle.a, columns)
      const b = valueOf(circle.b, columns)
      const { by, cos, sin } = farthest(a, b, circle.reserve)
      if (by <= valueOf(circle.radius, columns) + circle.slack) continue
      this.addRow(tangent(circle, cos, sin))
      cuts += 1
    }
    return cuts > 0
  }

  /** Forgets the last point, so that the next stage does not start from it. */
  forget(): void {
    this.model.clearSolver()
  }

  /** Frees the memory of the solver package. */
  dispose(): void {
    this.model.dispose()
  }
}
