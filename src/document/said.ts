import { fineSign, slopeSign, type DocumentUnits } from '../mechanics/units'

/** A number as it was typed, in its own unit, without its sign; rounding is left to the eye of who reads it back. */
export const digitsSaid = (value: number): string => String(Number(Math.abs(value).toPrecision(8)))

/** The same with a true minus where it is below nought. */
export const signedSaid = (value: number): string =>
  value < 0 ? `−${digitsSaid(value)}` : digitsSaid(value)

/** A fine value of a document, without its sign: "0.3 mm". */
export const fineSaid = (value: number, units: DocumentUnits): string =>
  `${digitsSaid(value)} ${fineSign[units.fine]}`

/** A slope of a document (mrad, mil/in), without its sign: "0.05 mrad". */
export const slopeSaid = (value: number, units: DocumentUnits): string =>
  `${digitsSaid(value)} ${slopeSign(units)}`

/** A length of a document (its length unit), with its sign: "1250 mm". */
export const lengthSaid = (value: number, units: DocumentUnits): string =>
  `${signedSaid(value)} ${units.length}`
