import { choleskyOf, solveLower, solveTransposed } from './cholesky'

/** Values that hang together, with what each gains from every unknown. */
interface ValuesObserved {
  readonly values: readonly number[]
  /** A row a value, an entry an unknown. */
  readonly design: readonly (readonly number[])[]
  /** Covariance of the values. */
  readonly covariance: readonly (readonly number[])[]
}

export interface LeastSquares {
  readonly unknowns: readonly number[]
  readonly covariance: readonly (readonly number[])[]
  /** What each unknown gains from every value: a row an unknown. */
  readonly gains: readonly (readonly number[])[]
  /** Sum of squares of what is left over, in its uncertainty. */
  readonly squares: number
}

/**
 * Generalized least squares (Aitken 1936; JCGM 102, 6 has its covariance): unknowns x of values A x with covariance V are
 * (A' W A)^-1 A' W values, W the inverse of V, with covariance (A' W A)^-1.
 */
export function leastSquares({ values, design, covariance }: ValuesObserved): LeastSquares {
  const lower = choleskyOf(covariance)
  const unknownCount = design[0]?.length ?? 0
  const whitened = Array.from({ length: unknownCount }, (_, k) =>
    solveLower(
      lower,
      design.map((row) => row[k] ?? 0),
    ),
  )
  const right = solveLower(lower, values)
  const inverse = inverseOf(whitened.map((a) => whitened.map((b) => dot(a, b))))
  const weighted = whitened.map((column) => solveTransposed(lower, column))
  const gains = inverse.map((row) =>
    values.map((_, i) => row.reduce((sum, entry, k) => sum + entry * (weighted[k]?.[i] ?? 0), 0)),
  )
  const unknowns = inverse.map((row) =>
    row.reduce((sum, entry, k) => sum + entry * dot(whitened[k] ?? [], right), 0),
  )
  const left = right.map(
    (value, i) =>
      value - unknowns.reduce((sum, unknown, k) => sum + unknown * (whitened[k]?.[i] ?? 0), 0),
  )
  return { unknowns, covariance: inverse, gains, squares: dot(left, left) }
}

/**
 * Inverse of a covariance or of normal equations, by Cholesky's triangle of the matrix scaled to a diagonal of 1. What
 * the last digits leave open gets the large variance that those digits allow; an unknown that is in no value stands apart.
 * @param matrix symmetric, positive semidefinite
 */
export function inverseOf(matrix: readonly (readonly number[])[]): number[][] {
  const scale = matrix.map((row, k) => Math.sqrt(row[k] ?? 0) || 1)
  const lower = choleskyOf(
    matrix.map((row, i) =>
      row.map((entry, j) => (i === j ? 1 : entry / ((scale[i] ?? 1) * (scale[j] ?? 1)))),
    ),
  )
  return matrix.map((_, i) => {
    const unit = matrix.map((__, j) => (i === j ? 1 : 0))
    return solveTransposed(lower, solveLower(lower, unit)).map(
      (entry, j) => entry / ((scale[i] ?? 1) * (scale[j] ?? 1)),
    )
  })
}

const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0)
