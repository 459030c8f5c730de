import {
  kilogramsPer,
  micrometresPer,
  millimetresPer,
  type DocumentUnits,
  type Kilograms,
  type Micrometres,
  type Millimetres,
} from '../mechanics/units'
import type { Refusal } from './refusal'

/** Largest length a document may hold; beyond it a number is a slip of the unit or the pen. */
export const largestLength: Millimetres = 1e6
/** Largest fine quantity a document may hold. */
export const largestFine: Micrometres = 1e6

/**
 * The one place where document numbers become engine numbers. Each conversion names its place, so
 * that an absurd size is refused where it stands.
 */
export class Door {
  readonly refused: Refusal[] = []
  private readonly units: DocumentUnits

  constructor(units: DocumentUnits) {
    this.units = units
  }

  /** Document length to millimetres; over 1 km is refused. */
  length(value: number, at: string): Millimetres {
    const inside = value * millimetresPer[this.units.length]
    if (Math.abs(inside) > largestLength) this.refuse(at, value, this.units.length, '1 km')
    return inside
  }

  /** Document fine quantity to micrometres; over 1 m is refused. */
  fine(value: number, at: string): Micrometres {
    const inside = value * micrometresPer[this.units.fine]
    if (Math.abs(inside) > largestFine) this.refuse(at, value, this.units.fine, '1 m')
    return inside
  }

  /** Document mass (kg, or lb in a document in inches) to kilograms. */
  mass(value: number): Kilograms {
    return value * kilogramsPer[this.units.length]
  }

  /** Heat growth to micrometres: height in document lengths, expansion in 1e-6 per degree. */
  heat(
    heat: { height: number; expansion: number; from: number; to: number },
    at: string,
  ): Micrometres {
    const height = this.length(heat.height, `${at}.height`)
    const rise = height * heat.expansion * 1e-3 * (heat.to - heat.from)
    if (Math.abs(rise) > largestFine)
      this.refused.push({
        at,
        why: `${rise / 1000} mm of growth is over 1 m: check height, expansion (1e-6 per degree) and temperatures`,
      })
    return rise
  }

  private refuse(at: string, value: number, unit: string, limit: string): void {
    this.refused.push({
      at,
      why: `${value} ${unit} is over ${limit}: check the number and the unit of the document`,
    })
  }
}
