import type { LinearProgram, LpRow } from './solver'

/**
 * Bounds of columns and rows of a linear program as one list of constraints in flat arrays, the columns first: value
 * between `lower` and `upper`, which may be moved. For what asks all of them many times.
 */
export class Constraints {
  /** Number of columns. */
  readonly n: number
  readonly count: number
  readonly lower: Float64Array
  readonly upper: Float64Array
  private readonly starts: Int32Array
  private readonly columns: Int32Array
  private readonly coefficients: Float64Array

  private constructor(
    n: number,
    count: number,
    arrays: Pick<Constraints, 'lower' | 'upper'> & {
      readonly starts: Int32Array
      readonly columns: Int32Array
      readonly coefficients: Float64Array
    },
  ) {
    this.n = n
    this.count = count
    ;({ lower: this.lower, upper: this.upper } = arrays)
    ;({ starts: this.starts, columns: this.columns, coefficients: this.coefficients } = arrays)
  }

  static of({ columns, rows }: Pick<LinearProgram, 'columns' | 'rows'>): Constraints {
    const n = columns.length
    const alone = new Constraints(n, n, {
      lower: Float64Array.from(columns, ({ lower }) => lower),
      upper: Float64Array.from(columns, ({ upper }) => upper),
      starts: Int32Array.from({ length: n + 1 }, (_, j) => j),
      columns: Int32Array.from({ length: n }, (_, j) => j),
      coefficients: new Float64Array(n).fill(1),
    })
    return alone.with(rows)
  }

  /** A copy with more rows behind. */
  with(rows: readonly LpRow[]): Constraints {
    const { n, count } = this
    const before = this.starts[count] ?? 0
    const terms = rows.reduce((sum, row) => sum + row.terms.length, before)
    const grown = {
      lower: lengthened(this.lower, count + rows.length),
      upper: lengthened(this.upper, count + rows.length),
      starts: lengthened(this.starts, count + rows.length + 1),
      columns: lengthened(this.columns, terms),
      coefficients: lengthened(this.coefficients, terms),
    }
    let t = before
    rows.forEach((row, i) => {
      grown.lower[count + i] = row.lower
      grown.upper[count + i] = row.upper
      for (const [column, a] of row.terms) {
        grown.columns[t] = column
        grown.coefficients[t] = a
        t++
      }
      grown.starts[count + i + 1] = t
    })
    return new Constraints(n, count + rows.length, grown)
  }

  /** Value of one constraint at a place, or its change along a way. */
  value(constraint: number, x: Float64Array): number {
    let sum = 0
    const end = this.starts[constraint + 1] ?? 0
    for (let t = this.starts[constraint] ?? 0; t < end; t++)
      sum += (this.coefficients[t] ?? 0) * (x[this.columns[t] ?? 0] ?? 0)
    return sum
  }

  /** Values of all of them. */
  values(x: Float64Array): Float64Array {
    const out = new Float64Array(this.count)
    for (let k = 0; k < this.count; k++) out[k] = this.value(k, x)
    return out
  }
}

/** A copy with room for more numbers, which are 0. */
export function lengthened<Numbers extends Float64Array | Int32Array>(
  from: Numbers,
  length: number,
): Numbers {
  const out = (
    from instanceof Float64Array ? new Float64Array(length) : new Int32Array(length)
  ) as Numbers
  out.set(from)
  return out
}
