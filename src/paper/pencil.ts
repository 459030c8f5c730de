import { signed } from '../language/signed'
import { tol } from '../mechanics/tolerances'
import { fineSign, slopeSign, toFine, toLength } from '../mechanics/units'
import type { Train } from '../mechanics/train'
import { towardSide } from '../language/sides'
import type { Plane } from './arithmetic'

/**
 * Digits for arithmetic by hand: one more than people read, so that what is worked out from the
 * printed figures agrees with the plan in the last digit that counts.
 */
const decimals = { um: 1, mm: 3, mil: 2 } as const

export interface Pencil {
  /** A fine quantity with its sign: "+0.360". */
  readonly fine: (value: number) => string
  /** Its size with its unit. */
  readonly size: (value: number) => string
  readonly length: (value: number) => string
  /** A slope with its sign, four digits after the point: it is multiplied by long distances. */
  readonly slope: (value: number) => string
  readonly unit: string
  readonly lengthUnit: string
  readonly slopeUnit: string
  /** "0.360 mm high", "0.040 mm toward the aisle", "in line". */
  readonly stands: (plane: Plane, value: number) => string
}

export function pencilOf(train: Train): Pencil {
  const { units } = train
  const digits = (value: number) => toFine(value, units).toFixed(decimals[units.fine])
  const unit = fineSign[units.fine]
  const size = (value: number) => `${digits(Math.abs(value))} ${unit}`
  return {
    fine: (value) => signed(digits(value)),
    size,
    length: (value) => String(Number(toLength(value, units).toFixed(3))).replace('-', '\u2212'),
    slope: (value) => signed(value.toFixed(4)),
    unit,
    lengthUnit: units.length,
    slopeUnit: slopeSign(units),
    stands: (plane, value) => {
      if (!/[1-9]/.test(digits(value))) return 'in line'
      return `${size(value)} ${plane === 'up' ? (value > 0 ? 'high' : 'low') : towardSide(train, value)}`
    },
  }
}

/** A slope times a distance is a fine quantity: 1 mrad is 1 um a mm, 1 mil an inch. */
export const slopeRule = (train: Train): string => {
  const { fine, length } = train.units
  const per = { um: 1000, mm: 1, mil: 1000 / 25.4 }[fine] / (length === 'in' ? 1000 / 25.4 : 1000)
  return Math.abs(per - 1) < tol.lastDigits
    ? `1 mrad is 1 ${fineSign[fine]} in 1 ${length}`
    : `1 mrad is ${Number(per.toPrecision(4))} ${fineSign[fine]} in 1 ${length}`
}
