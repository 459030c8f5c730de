import type { Quantity } from '../document/quantities'
import { tidy } from '../language/tidy'
import {
  kilogramsPer,
  micrometresPer,
  millimetresPer,
  type DocumentUnits,
} from '../mechanics/units'

/** What a number of an answer measures: um, mm, kg, mrad in the engine; a plain one has no unit. */
export type Measure = Extract<Quantity, 'fine' | 'length' | 'mass' | 'sliding' | 'slope' | 'plain'>

/** The engine's units (um, mm, kg, mrad) in one of the document's. */
export function engineUnitsPer(measure: Measure, units: DocumentUnits): number {
  switch (measure) {
    case 'fine':
      return micrometresPer[units.fine]
    case 'length':
    case 'sliding':
      return millimetresPer[units.length]
    case 'mass':
      return kilogramsPer[units.length]
    case 'slope':
    case 'plain':
      return 1
  }
}

/**
 * A number of an answer in the unit that the document has for it, without its last digits.
 * @param value in the engine's unit for the measure: um, mm, kg, mrad, or none
 */
export const inUnits = (value: number, measure: Measure, units: DocumentUnits): number =>
  tidy(value / engineUnitsPer(measure, units))
