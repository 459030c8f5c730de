import { fineDigits } from './amounts'
import { fineSign, type Micrometres } from '../mechanics/units'
import type { Train } from '../mechanics/train'

/** What the side at +y (3 o'clock) or -y (9 o'clock) is called, as the file says it. */
export const sideName = (train: Train, y: number): string =>
  y >= 0 ? train.sides.three : train.sides.nine

/** "toward the pipe rack": what the file calls a side, with "toward" put before it where it lacks. */
export function towardSide(train: Train, y: number): string {
  const name = (y > 0 ? train.sides.three : train.sides.nine).trim()
  return /^(to|toward|towards)\s/i.test(name) ? name : `toward ${name}`
}

/** The side's name without its preposition: "toward the pipe rack" is "pipe rack". */
export const sideNoun = (train: Train, y: number): string =>
  sideName(train, y)
    .trim()
    .replace(/^(towards?|to) /i, '')
    .replace(/^the /i, '')

/**
 * Which way is up the page where the train is seen from above, its left end at the left: +1 when
 * +y (3 o'clock) is, -1 when it is down the page. Clock faces seen from the right end have 3 o'clock
 * on the far side of someone who sees the left end at the left.
 */
export const upThePage = (train: Train): 1 | -1 => (train.seenFrom === 'right' ? 1 : -1)

/** True when a quantity shows as nothing in the digits people read. */
export const showsNought = (value: Micrometres, train: Train): boolean =>
  !/[1-9]/.test(fineDigits(value, train.units))

/** A quantity as words beside a direction: digits and unit apart, so that they can be set apart. */
export interface Amount {
  readonly digits: string
  readonly unit: string
}

/** The size of a quantity; its direction is said in words. */
export const amount = (value: Micrometres, train: Train): Amount => ({
  digits: fineDigits(Math.abs(value), train.units),
  unit: fineSign[train.units.fine],
})
