/**
 * Cholesky's triangle of a covariance (textbook): lower times its transpose is the matrix.
 * A pivot that is lost in the last digits of its own diagonal counts as those digits, so that what stands beside it
 * stays as small as its diagonal allows.
 * @param matrix symmetric, positive definite or nearly so
 */
export function choleskyOf(matrix: readonly (readonly number[])[]): number[][] {
  const lower: number[][] = matrix.map((row) => row.map(() => 0))
  for (const [i, to] of lower.entries())
    for (let j = 0; j <= i; j++) {
      const least = Math.max((matrix[i]?.[i] ?? 0) * Number.EPSILON, Number.MIN_VALUE)
      const other = lower[j] ?? to
      let sum = matrix[i]?.[j] ?? 0
      for (let k = 0; k < j; k++) sum -= (to[k] ?? 0) * (other[k] ?? 0)
      to[j] = i === j ? Math.sqrt(Math.max(sum, least)) : sum / (other[j] ?? 1)
    }
  return lower
}

/** Solves lower x = right from the top down. */
export function solveLower(
  lower: readonly (readonly number[])[],
  right: readonly number[],
): number[] {
  const x: number[] = []
  for (const [i, row] of lower.entries()) {
    let rest = right[i] ?? 0
    for (let k = 0; k < i; k++) rest -= (row[k] ?? 0) * (x[k] ?? 0)
    x.push(rest / (row[i] ?? 1))
  }
  return x
}

/** Solves lower' x = right, the transpose, from the bottom up. */
export function solveTransposed(
  lower: readonly (readonly number[])[],
  right: readonly number[],
): number[] {
  const x = [...right]
  for (let i = lower.length - 1; i >= 0; i--) {
    const row = lower[i] ?? []
    const own = (x[i] ?? 0) / (row[i] ?? 1)
    x[i] = own
    for (let k = 0; k < i; k++) x[k] = (x[k] ?? 0) - own * (row[k] ?? 0)
  }
  return x
}
