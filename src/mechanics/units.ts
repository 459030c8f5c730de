/**
 * The engine's own units. They are chosen so that one relation needs no factor:
 * micrometres = milliradians x millimetres.
 */
export type Micrometres = number
export type Millimetres = number
export type Milliradians = number
export type Kilograms = number
export type NewtonMetres = number
export type Minutes = number
export type MillimetresPerSecond = number

export type LengthUnit = 'mm' | 'in'
export type FineUnit = 'um' | 'mm' | 'mil'
type TemperatureUnit = 'C' | 'F'

/** Millimetres in one document length unit; exact by definition of the international inch. */
export const millimetresPer: Record<LengthUnit, number> = { mm: 1, in: 25.4 }

/** Kilograms in the mass unit that goes with a document's length unit: kg, or the pound (exact by definition). */
export const kilogramsPer: Record<LengthUnit, number> = { mm: 1, in: 0.45359237 }

/** Newtons in the force that goes with a document's length unit: kN, or the pound-force (exact). */
export const newtonsPer: Record<LengthUnit, number> = { mm: 1000, in: 4.4482216152605 }

/** Watts in the power that goes with it: kW, or the horsepower of 550 foot-pounds a second (exact). */
export const wattsPer: Record<LengthUnit, number> = { mm: 1000, in: 550 * 0.3048 * 4.4482216152605 }

/** Newton metres in the torque that goes with a document's length unit: N·m, or the foot-pound force (0.3048 m times 4.4482216152605 N, exact). */
export const newtonMetresPer: Record<LengthUnit, number> = { mm: 1, in: 0.3048 * 4.4482216152605 }

/** The sign after a temperature. */
export const temperatureSign = ({ temperature }: DocumentUnits): string => `°${temperature}`

/** The signs after a force and a power. */
export const forceSign: Record<LengthUnit, string> = { mm: 'kN', in: 'lb' }
export const powerSign: Record<LengthUnit, string> = { mm: 'kW', in: 'hp' }

/** The sign after a torque. */
export const torqueSign: Record<LengthUnit, string> = { mm: 'N·m', in: 'ft·lb' }

/** The sign after the speed at which teeth slide. */
export const slidingSign: Record<LengthUnit, string> = { mm: 'mm/s', in: 'in/s' }

/** The sign after a mass. */
export const massSign: Record<LengthUnit, string> = { mm: 'kg', in: 'lb' }

/** Micrometres in one document fine unit; 1 mil = 0.001 in, exact. */
export const micrometresPer: Record<FineUnit, number> = { um: 1, mm: 1000, mil: 25.4 }

/** The units a document is written in. */
export interface DocumentUnits {
  length: LengthUnit
  fine: FineUnit
  temperature: TemperatureUnit
}

/** Micrometres to the document's fine unit. */
export const toFine = (value: Micrometres, units: DocumentUnits): number =>
  value / micrometresPer[units.fine]

/** Millimetres to the document's length unit. */
export const toLength = (value: Millimetres, units: DocumentUnits): number =>
  value / millimetresPer[units.length]

/** The word or sign that stands after a fine value. */
export const fineSign: Record<FineUnit, string> = { um: 'µm', mm: 'mm', mil: 'mil' }

/** Slopes carry the unit people of that document use; 1 mrad = 1 mm/m = 1 mil/in. */
export const slopeSign = (units: DocumentUnits): string =>
  units.length === 'in' && units.fine === 'mil' ? 'mil/in' : 'mrad'
