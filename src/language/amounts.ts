import { signed } from './signed'
import { tol } from '../mechanics/tolerances'
import {
  fineSign,
  slopeSign,
  toFine,
  toLength,
  type DocumentUnits,
  type Micrometres,
  type Millimetres,
  type Milliradians,
} from '../mechanics/units'
import { tidy } from './tidy'

/** Decimals that people read a fine quantity with: a hundredth of a mm, a tenth of a mil, a um. */
export const fineDecimals = { um: 0, mm: 2, mil: 1 } as const

/** A micrometre value as people of the document write it, such as "0.36 mm"; no sign for zero. */
export function fineText(value: Micrometres, units: DocumentUnits): string {
  return `${fineDigits(value, units)} ${fineSign[units.fine]}`
}

/** The same with its sign always in front, as dials and differences are written: "+0.36 mm"; nought is "0". */
export function signedText(value: Micrometres, units: DocumentUnits): string {
  const digits = signedDigits(value, units)
  return digits === '0' ? digits : `${digits} ${fineSign[units.fine]}`
}

/** The digits of that. */
export function signedDigits(value: Micrometres, units: DocumentUnits): string {
  const digits = fineDigits(value, units)
  return /[1-9]/.test(digits) ? signed(digits) : '0'
}

/** The digits alone of a micrometre value, in the document's fine unit. */
export function fineDigits(value: Micrometres, units: DocumentUnits): string {
  return unsignedZero(toFine(value, units).toFixed(fineDecimals[units.fine]))
}

/**
 * A micrometre value of an answer, such as "0.36 mm". The last digits of a solver are taken off before it is
 * rounded, so that 0.125 is not sometimes a hair less.
 */
export const toldText = (value: Micrometres, units: DocumentUnits): string =>
  `${toldDigits(value, units)} ${fineSign[units.fine]}`

export const toldDigits = (value: Micrometres, units: DocumentUnits): string =>
  fineDigits(tidy(value), units)

/** True where a micrometre value of an answer shows as nothing in the digits people read. */
export const toldNought = (value: Micrometres, units: DocumentUnits): boolean =>
  !/[1-9]/.test(toldDigits(value, units))

/** What an amount comes to that shows as nothing: "under 0.01 mm", one step of the digits people read. */
export const underDigits = ({ fine }: DocumentUnits): string =>
  `under ${(10 ** -fineDecimals[fine]).toFixed(fineDecimals[fine])} ${fineSign[fine]}`

/** The digits of a slope of an answer (mrad). */
export const slopeDigits = (value: Milliradians): string => tidy(value).toFixed(2)

/** A small length (mm), such as an axial gap, in hundredths of a mm or thousandths of an inch; no unit. */
export const lengthDigits = (value: Millimetres, units: DocumentUnits): string =>
  tidy(toLength(value, units)).toFixed(units.length === 'mm' ? 2 : 3)

/** A length (mm) as people of the document write it, such as "1250 mm". */
export function lengthText(value: Millimetres, units: DocumentUnits): string {
  const number = toLength(value, units)
  return `${String(Math.round(number * 1000) / 1000)} ${units.length}`
}

/** A gap between shaft ends in digits as it is measured: to 0.01 mm, or to 0.001 in. */
export const gapDigits = (value: Millimetres, units: DocumentUnits): string =>
  unsignedZero(toLength(value, units).toFixed(gapDecimals[units.length]))

export const gapDecimals = { mm: 2, in: 3 } as const

/**
 * A slope, the same number in mrad and mil/in.
 * @param value mrad
 */
export const slopeText = (value: number, units: DocumentUnits): string =>
  `${unsignedZero(value.toFixed(2))} ${slopeSign(units)}`

/** A share of tolerance in whole percent; "under 1 %" rather than a false nought. */
export function shareText(share: number): string {
  const percent = Math.round(share * 100)
  return percent === 0 && share > tol.dust ? 'under 1 %' : `${percent} %`
}

const unsignedZero = (digits: string): string =>
  /^-0(\.0*)?$/.test(digits) ? digits.slice(1) : digits
