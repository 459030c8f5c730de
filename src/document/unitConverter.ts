import { tol } from '../mechanics/tolerances'
import {
  kilogramsPer,
  newtonMetresPer,
  micrometresPer,
  millimetresPer,
  type DocumentUnits,
  type Micrometres,
  type Millimetres,
} from '../mechanics/units'
import { withNumbers } from './numbers'
import type { Quantity } from './quantities'
import { placeOf, type Refusal } from './refusal'
import type { TrainDocument } from './schema'

/** Largest length a document may hold; beyond it a number is a slip of the unit or the pen. */
const largestLength: Millimetres = tol.largestLength
/** Largest fine quantity a document may hold. */
export const largestFine: Micrometres = tol.largestFine

/** How a quantity becomes the engine's: the factor, the unit it is written in, and what is too large. */
interface Conversion {
  readonly factor: number
  readonly unit?: string
  readonly most?: { readonly value: number; readonly said: string }
}

/**
 * The document with its numbers in engine units: mm, um, mrad, kg, N·m. Temperatures and expansions stay as
 * they are, since only their product counts, which is the same in both units.
 * The one place where document numbers become engine numbers: which one is what stands in the schema.
 * @returns the document, and a refusal for each absurd size where it stands: over 1 km, over 1 m of a
 * fine quantity. Parts that are open in the file are neither converted nor refused
 */
export function inEngineUnits(document: TrainDocument): {
  readonly document: TrainDocument
  readonly refused: readonly Refusal[]
} {
  const refused: Refusal[] = []
  const conversions = conversionsFrom(document.units)
  const converted = withNumbers(document, ({ value, quantity, open, path }) => {
    if (open) return value
    const { factor, unit = '', most } = conversions[quantity]
    const inside = value * factor
    if (most && Math.abs(inside) > most.value)
      refused.push({
        at: placeOf(path),
        why: `${value} ${unit} is over ${most.said}: check the number and the unit of the document`,
      })
    return inside
  })
  return { document: converted, refused }
}

function conversionsFrom({
  length,
  fine,
}: Pick<DocumentUnits, 'length' | 'fine'>): Record<Quantity, Conversion> {
  const same = { factor: 1 }
  return {
    length: {
      factor: millimetresPer[length],
      unit: length,
      most: { value: largestLength, said: '1 km' },
    },
    fine: {
      factor: micrometresPer[fine],
      unit: fine,
      most: { value: largestFine, said: '1 m' },
    },
    mass: { factor: kilogramsPer[length] },
    torque: { factor: newtonMetresPer[length] },
    slope: same,
    temperature: same,
    expansion: same,
    speed: same,
    hour: same,
    plain: same,
  }
}
