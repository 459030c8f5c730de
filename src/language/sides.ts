import { tol } from '../mechanics/tolerances'
import { fineDigits } from './amounts'
import { fineSign, type Micrometres } from '../mechanics/units'
import type { Body, Train } from '../mechanics/train'

/**
 * What the side at +y (3 o'clock) or -y (9 o'clock) is called, as the file says it.
 * @param y mm or um: its sign alone counts
 */
export const sideName = (train: Train, y: number): string =>
  y >= 0 ? train.sides.three : train.sides.nine

/** What has sides that may have names: a train, or a document under way. */
export interface Sided {
  readonly sides?:
    { readonly three?: string | undefined; readonly nine?: string | undefined } | undefined
}

/**
 * "toward the pipe rack": what the file calls the side at +y (3 o'clock) or -y, with "toward" put
 * before it where it lacks; the hour where the side has no name.
 */
export function towardSide({ sides }: Sided, y: number): string {
  const named = (y > 0 ? sides?.three : sides?.nine)?.trim() ?? ''
  const name = named === '' ? `${y > 0 ? 3 : 9} o'clock` : named
  return /^(to|toward|towards)\s/i.test(name) ? name : `toward ${name}`
}

/**
 * The side's name without its preposition: "toward the pipe rack" is "pipe rack".
 * @param y mm or um: its sign alone counts
 */
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

/** Whether a foot at y (mm) stands beyond the middle of its body's feet, on a page seen from above. */
export function onFarSide(train: Train, { feet }: Body, y: number): boolean {
  const ys = feet.map((foot) => foot.y)
  const middle = (Math.min(...ys) + Math.max(...ys)) / 2
  return upThePage(train) * (y - middle) > tol.dust
}

/**
 * Which side is which, said wherever directions or signs are read: sides without names are known by their hours alone.
 * @param of what has its left and right told: the train, or the drawing of it
 */
export function sidesInWords(train: Train, of: 'train' | 'drawing'): string {
  const named = ([1, -1] as const).flatMap((y) => {
    const toward = towardSide(train, y)
    return /^toward [39] o'clock$/.test(toward) ? [] : [`${y > 0 ? 3 : 9} o'clock is ${toward}`]
  })
  const last = `Left and right are those of the ${of}.`
  return named.length === 0
    ? `The sides have no names: 3 and 9 o'clock are as on a clock seen from the ${train.seenFrom} end. ${last}`
    : `Seen from the ${train.seenFrom} end, ${named.join(' and ')}. ${last}`
}

/** A way in which something goes or presses. */
export type Way = 'three' | 'nine' | 'left' | 'right' | 'up' | 'down'

/** The same in words, the sides by the names that the file gives them. */
export function wayInWords(train: Train, way: Way): string {
  switch (way) {
    case 'three':
      return towardSide(train, 1)
    case 'nine':
      return towardSide(train, -1)
    case 'left':
    case 'right':
      return `toward the ${way} end`
    case 'up':
      return 'upward'
    case 'down':
      return 'downward'
  }
}

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
