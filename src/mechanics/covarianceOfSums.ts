/**
 * Covariance of two weighted sums of values that hang together, a' V b (JCGM 102, 6.2).
 * @param a weights of the one sum, @param covariance of the values, @param b weights of the other
 */
export const covarianceOfSums = (
  a: readonly number[],
  covariance: readonly (readonly number[])[],
  b: readonly number[],
): number =>
  a.reduce(
    (sum, ai, i) => sum + b.reduce((all, bj, j) => all + ai * bj * (covariance[i]?.[j] ?? 0), 0),
    0,
  )
