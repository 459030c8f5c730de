import { tol } from '../mechanics/tolerances'
import { fineSign, micrometresPer, slopeSign, toFine, toLength } from '../mechanics/units'
import type { Train } from '../mechanics/train'
import { fineText, fineDecimals } from './amounts'

/** An amount that is enough is told rounded up, one that is needed at least rounded down: both stay true. */
export type RoundTo = 'up' | 'down'

const stepped = (value: number, step: number, round: RoundTo): number =>
  (round === 'up' ? Math.ceil(value / step - tol.digit) : Math.floor(value / step + tol.digit)) *
  step

/** The step of two digits that say something. */
const twoDigits = (value: number): number => 10 ** (Math.floor(Math.log10(value)) - 1)

/** A length of `um` micrometres in the digits that people read, never rounded to the wrong side. */
export function fineAmount(um: number, round: RoundTo, { units }: Pick<Train, 'units'>): string {
  const step = micrometresPer[units.fine] / 10 ** fineDecimals[units.fine]
  const value = stepped(um, step, round)
  // less than one step, rounded down, would read as nothing
  if (value > 0) return fineText(value, units)
  return `${twoDigitText(toFine(um, units), round)} ${fineSign[units.fine]}`
}

/** A slope of `mrad` milliradians, two digits. */
export const slopeAmount = (
  mrad: number,
  round: RoundTo,
  { units }: Pick<Train, 'units'>,
): string => `${twoDigitText(mrad, round)} ${slopeSign(units)}`

/** A length of `mm` millimetres, two digits. */
export const lengthAmount = (mm: number, round: RoundTo, { units }: Pick<Train, 'units'>): string =>
  `${twoDigitText(toLength(mm, units), round)} ${units.length}`

function twoDigitText(value: number, round: RoundTo): string {
  if (!(value > 0)) return '0'
  const step = twoDigits(value)
  return String(Number(stepped(value, step, round).toPrecision(6)))
}

/**
 * A share of tolerance in percent with so many decimals: down for what no move reaches less than, up for
 * what can be reached, so that either stays true when it is entered as it is told.
 */
export function shareAmount(share: number, round: RoundTo, decimals = 0): string {
  return `${stepped(share * 100, 10 ** -decimals, round).toFixed(decimals)} %`
}
