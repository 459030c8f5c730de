/**
 * Cholesky's triangle of a covariance (textbook): lower times its transpose is the matrix.
 * @param matrix symmetric, positive definite
 */
export function choleskyOf(matrix: readonly (readonly number[])[]): number[][] {
  const lower = matrix.map((row) => row.map(() => 0))
  for (const [i, row] of matrix.entries())
    for (let j = 0; j <= i; j++) {
      let sum = row[j] ?? 0
      for (let k = 0; k < j; k++) sum -= (lower[i]?.[k] ?? 0) * (lower[j]?.[k] ?? 0)
      const to = lower[i]
      if (to)
        to[j] = i === j ? Math.sqrt(Math.max(sum, Number.MIN_VALUE)) : sum / (lower[j]?.[j] ?? 1)
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
