import type { Train } from '../mechanics/train'
import { digitsOf, showsNothing } from '../engine/plan/sentence'

/** A quantity in the document's fine unit with its sign in front, as dials and differences are written; nought has none. */
export function signedDigits(value: number, train: Train): string {
  if (showsNothing(value, train)) return '0'
  return `${value > 0 ? '+' : '\u2212'}${digitsOf(Math.abs(value), train)}`
}
