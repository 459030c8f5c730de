import { tol } from './tolerances'

/**
 * The sum of squares that chance passes with a risk: the quantile of chi-square at 1 - risk, from the series of the
 * incomplete gamma function (Abramowitz and Stegun 6.5.29) by halving; checked against printed tables.
 * @param freedom degrees of freedom, a whole number, at least 1
 */
export function chiSquareQuantile(risk: number, freedom: number): number {
  let [low, high] = [0, freedom]
  while (1 - chiSquareBelow(high, freedom) > risk) high *= 2
  while (high - low > tol.fewRoundings * high) {
    const middle = (low + high) / 2
    if (middle === low || middle === high) break
    if (1 - chiSquareBelow(middle, freedom) > risk) low = middle
    else high = middle
  }
  return (low + high) / 2
}

/** Probability that a chi-square lies below a value. */
function chiSquareBelow(value: number, freedom: number): number {
  if (value <= 0) return 0
  const [a, x] = [freedom / 2, value / 2]
  let term = Math.exp(a * Math.log(x) - x - logFactorial(a))
  let sum = 0
  for (let n = 1; term > sum * Number.EPSILON; n++) {
    sum += term
    term *= x / (a + n)
  }
  return Math.min(1, sum)
}

/** ln Gamma(a + 1) of a whole or half number, down to Gamma(1) = 1 or Gamma(1/2) = root of pi. */
function logFactorial(a: number): number {
  let sum = Number.isInteger(a) ? 0 : Math.log(Math.PI) / 2
  for (let k = a; k > 0; k--) sum += Math.log(k)
  return sum
}
