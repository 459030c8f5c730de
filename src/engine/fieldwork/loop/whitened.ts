import { solveSymmetric } from '../../../mechanics/symmetric'

/** What a least-squares fit of columns to a vector comes to. */
interface ColumnFit {
  readonly by: readonly number[]
  /** Sum of squares that stays. */
  readonly squares: number
}

/** Least squares of columns that are of one weight already. */
export function fitColumns(
  columns: readonly (readonly number[])[],
  values: readonly number[],
): ColumnFit {
  const norms = columns.map((column) => Math.hypot(...column) || 1)
  const scaled = columns.map((column, k) => column.map((value) => value / (norms[k] ?? 1)))
  const dot = (a: readonly number[], b: readonly number[]) =>
    a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0)
  const parts = solveSymmetric(
    scaled.map((a) => scaled.map((b) => dot(a, b))),
    scaled.map((a) => dot(a, values)),
  )
  const rest = values.map((value, i) =>
    scaled.reduce((left, column, k) => left - (parts[k] ?? 0) * (column[i] ?? 0), value),
  )
  return { by: parts.map((part, k) => part / (norms[k] ?? 1)), squares: dot(rest, rest) }
}
