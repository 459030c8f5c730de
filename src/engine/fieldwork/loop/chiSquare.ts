/** Standard normal quantile that is passed once in a thousand. */
const onceInAThousand = 3.0902

/**
 * The sum of squares of standardized residuals that chance passes once in a thousand: the chi-square quantile by the
 * cube-root normal approximation of Wilson and Hilferty (1931), within 3 % from two degrees of freedom on.
 * @param freedom degrees of freedom, at least 1
 */
export function chiSquareLimit(freedom: number): number {
  const spread = 2 / (9 * freedom)
  return freedom * (1 - spread + onceInAThousand * Math.sqrt(spread)) ** 3
}
