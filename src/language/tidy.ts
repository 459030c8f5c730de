import { tol } from '../mechanics/tolerances'

/** Digits that an answer carries: far more than any reading, fewer than where machines may differ. */
const digits = 12

/**
 * A number for an answer: rounding taken off, and no minus on a zero.
 * @param value in any unit of a document or of the engine; the unit stays
 */
export function tidy(value: number): number {
  if (Math.abs(value) < tol.dust) return 0
  return Number(value.toPrecision(digits))
}
