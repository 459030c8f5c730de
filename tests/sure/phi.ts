/** Standard normal distribution by its continued series, Abramowitz and Stegun 26.2.11 (from memory). */
export function phi(x: number): number {
  if (Math.abs(x) > 8) return x > 0 ? 1 : 0
  let [term, sum] = [x, x]
  for (let n = 1; Math.abs(term) > 1e-17; n++) {
    term *= (x * x) / (2 * n + 1)
    sum += term
  }
  return 0.5 + (sum * Math.exp((-x * x) / 2)) / Math.sqrt(2 * Math.PI)
}

/** The chance that a normal value of this mean and deviation lies within a limit on both sides. */
export const within = (mean: number, deviation: number, limit: number): number =>
  phi((limit - mean) / deviation) - phi((-limit - mean) / deviation)
