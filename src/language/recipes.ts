import { tol } from '../mechanics/tolerances'
import type { Train } from '../mechanics/train'
import { fineSign, toFine, type DocumentUnits, type Micrometres } from '../mechanics/units'
import { fineDigits, fineText } from './amounts'
import { showsNought } from './sides'

/** What a hand does to a pack: thickness goes in (+) or comes out (-). */
export type ShimVerb = 'put in' | 'take out'

export const shimVerb = (change: Micrometres): ShimVerb => (change > 0 ? 'put in' : 'take out')

/** What is done to one pack, without its plates: "put in 0.35 mm", "take out 0.10 mm", "pack stays". */
export const shimText = (train: Train, change: Micrometres): string =>
  showsNought(change, train)
    ? 'pack stays'
    : `${shimVerb(change)} ${fineText(Math.abs(change), train.units)}`

/** A pack now and after: "pack 3.00 mm, then 3.35 mm"; um. */
export const packText = (
  train: Train,
  before: Micrometres | undefined,
  after: Micrometres | undefined,
): string =>
  before === undefined || after === undefined
    ? 'pack not entered: measure it'
    : `pack ${fineText(before, train.units)}, then ${fineText(after, train.units)}`

/** Thickness of a plate as it is marked: digits as of other quantities, more where the plate has more (0.025). */
export function plateDigits(plate: Micrometres, units: DocumentUnits): string {
  const value = toFine(plate, units)
  const digits = fineDigits(plate, units)
  return Math.abs(Number(digits) - value) < tol.dust ? digits : String(Number(value.toPrecision(6)))
}

/** One pack and the plates of the store that change it, in um. */
export interface Recipe {
  readonly change: Micrometres
  /** The pack after; not known where the pack now was not entered. */
  readonly packAfter?: Micrometres
  /** The whole pack after where packs are made anew, else what goes in; empty where plates only come out. */
  readonly use: readonly Micrometres[]
}

/**
 * What is done to one pack, in plates: "put in 0.25 + 0.10 mm", "take out 0.50 mm", and where the store has packs
 * made anew "take the pack out, put in 0.50 + 0.25 mm (0.10 less)".
 */
export function recipeText(train: Train, { change, packAfter, use }: Recipe): string {
  const { units, plan } = train
  const unit = fineSign[units.fine]
  const plates = use.map((plate) => plateDigits(plate, units)).join(' + ')
  const size = plateDigits(Math.abs(change), units)
  // a pack whose height is not known cannot be made anew: plates go on top
  if (plan.shims?.rebuild === true && packAfter !== undefined)
    return use.length === 0
      ? 'take the pack out'
      : `take the pack out, put in ${plates} ${unit} (${size} ${change > 0 ? 'more' : 'less'})`
  return change < 0 ? `take out ${size} ${unit}` : `put in ${plates} ${unit}`
}
