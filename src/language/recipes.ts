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
  /** What comes out: plates where they are known, else one thickness. */
  readonly out: readonly Micrometres[]
  /** Plates that go in: the whole pack after where it is made anew. */
  readonly use: readonly Micrometres[]
}

/**
 * What is done to one pack, in plates: "put in 0.25 + 0.10 mm", "take out 0.50 mm", "take out 0.07, put in 0.05 mm
 * (0.02 less)", and where it is made anew "take the pack out, put in 0.50 + 0.25 mm (0.10 less)".
 */
export function recipeText(train: Train, { change, packAfter, out, use }: Recipe): string {
  const { units } = train
  const unit = fineSign[units.fine]
  const plates = (list: readonly Micrometres[]) =>
    list.map((plate) => plateDigits(plate, units)).join(' + ')
  const by = `(${plateDigits(Math.abs(change), units)} ${change > 0 ? 'more' : 'less'})`
  if (out.length === 0) return `put in ${plates(use)} ${unit}`
  const taken = out.reduce((sum, plate) => sum + plate, 0)
  const whole = packAfter !== undefined && Math.abs(packAfter - change - taken) < tol.packOut
  if (use.length === 0) return whole ? 'take the pack out' : `take out ${plates(out)} ${unit}`
  return `take ${whole ? 'the pack out' : `out ${plates(out)}`}, put in ${plates(use)} ${unit} ${by}`
}
