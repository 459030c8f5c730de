import { fineDigits } from '../language/amounts'
import { fineSign, micrometresPer, toFine, type Micrometres } from '../mechanics/units'
import type { Train } from '../mechanics/train'
import type { PlanAnswer } from '../engine/work/answer'
import type { PackAnswer } from '../engine/rounding/answer'

/** What goes out of and into a pack, in plates of the store: "put in 0.25 + 0.10 mm". */
export function recipeOf(
  train: Train,
  { packs }: PlanAnswer,
  body: string,
  foot: string,
): string | undefined {
  const pack = packs?.find((entry) => entry.body === body && entry.foot === foot)
  return pack && recipeText(train, pack)
}

export function recipeText(
  train: Train,
  { change, use }: Pick<PackAnswer, 'change' | 'use'>,
): string {
  const { units, plan } = train
  const fine = micrometresPer[units.fine]
  const unit = fineSign[units.fine]
  if (use.length === 0)
    return `take out plates of ${fineDigits(Math.abs(change * fine), units)} ${unit}`
  const plates = `${use.map((plate) => plateText(train, plate * fine)).join(' + ')} ${unit}`
  if (plan.shims?.rebuild === true) return `make anew: ${plates}`
  return `put in ${plates}`
}

/** A plate as it is marked: 0.025 stays 0.025, whatever digits people read moves with. */
export const plateText = (train: Train, plate: Micrometres): string =>
  String(Number(toFine(plate, train.units).toFixed(4)))
