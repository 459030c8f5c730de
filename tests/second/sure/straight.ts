/** What each of several points adds to the straight line through them. */
export interface Straight {
  /** What each point adds to the line at x. */
  at: (x: number) => number[]
  /** What each point adds to the slope of the line. */
  slope: number[]
}

const oneX = 1e-6 // mm

/** Unweighted least squares through points at these x; one x alone gives a level line through their mean. */
export function straight(xs: readonly number[]): Straight {
  const mean = xs.reduce((sum, x) => sum + x, 0) / xs.length
  const spread = xs.reduce((sum, x) => sum + (x - mean) ** 2, 0)
  const level = xs.every((x) => Math.abs(x - mean) < oneX)
  const slope = xs.map((x) => (level ? 0 : (x - mean) / spread))
  return {
    slope,
    at: (x) => slope.map((s) => 1 / xs.length + s * (x - mean)),
  }
}
