/**
 * Standard normal quantile for a probability of 0.5 and more, to 4.5e-4 (Abramowitz and Stegun 26.2.23; coefficients
 * from memory, checked against table values).
 */
export function normalQuantile(p: number): number {
  const t = Math.sqrt(-2 * Math.log(1 - p))
  return (
    t -
    (2.515517 + 0.802853 * t + 0.010328 * t * t) /
      (1 + 1.432788 * t + 0.189269 * t * t + 0.001308 * t * t * t)
  )
}
