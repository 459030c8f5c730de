/** A chance as a fraction of draws, with what the number of draws leaves open. */
export interface Chance {
  readonly chance: number
  readonly low: number
  readonly high: number
}

/** 95 % of a normal distribution lies within so many standard deviations. */
const z = 1.959964

/**
 * Fraction of good draws with its 95 % interval by Wilson's score (Wilson 1927), of the sampling alone.
 * @param draws above 0
 */
export function chanceOf(good: number, draws: number): Chance {
  const p = good / draws
  const middle = p + (z * z) / (2 * draws)
  const half = z * Math.sqrt((p * (1 - p)) / draws + (z * z) / (4 * draws * draws))
  const whole = 1 + (z * z) / draws
  return {
    chance: p,
    // without a good draw, or a bad one, an end is the chance itself, which rounding of the quotient would pass
    low: good === 0 ? 0 : (middle - half) / whole,
    high: good === draws ? 1 : (middle + half) / whole,
  }
}
