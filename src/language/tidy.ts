/** Digits that an answer carries: far more than any reading, fewer than where machines may differ. */
const digits = 12
/** Smaller than this, in any unit of a document, a number is rounding and written as 0. */
const nothing = 1e-9

/** A number for an answer: rounding taken off, and no minus on a zero. */
export function tidy(value: number): number {
  if (Math.abs(value) < nothing) return 0
  return Number(value.toPrecision(digits))
}
