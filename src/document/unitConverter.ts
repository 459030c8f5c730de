import {
  kilogramsPer,
  newtonMetresPer,
  slidingSign,
  micrometresPer,
  millimetresPer,
  type DocumentUnits,
} from '../mechanics/units'
import { withNumbers } from './numbers'
import type { Quantity, Size } from './quantities'
import { placeOf, type Refusal } from './refusal'
import type { TrainDocument } from './schema'

/** How a quantity becomes the engine's: the factor, and the unit it is written in. */
interface Conversion {
  readonly factor: number
  readonly unit?: string
}

/**
 * The document with its numbers in engine units: mm, um, mrad, kg, N·m. Temperatures and expansions stay as
 * they are, since only their product counts, which is the same in both units.
 * The one place where document numbers become engine numbers: which one is what stands in the schema.
 * @returns the document, and a refusal for each absurd size where it stands (`sizes` has what is). Parts that are open in the file are neither converted nor refused
 */
export function inEngineUnits(document: TrainDocument): {
  readonly document: TrainDocument
  readonly refused: readonly Refusal[]
} {
  const refused: Refusal[] = []
  const conversions = conversionsFrom(document.units)
  const converted = withNumbers(document, ({ value, quantity, bounds, open, path }) => {
    if (open) return value
    const { factor, unit = '' } = conversions[quantity]
    const inside = value * factor
    const written = `${value} ${unit}`.trim()
    const { least, most } = bounds
    if (most && Math.abs(inside) > most.value)
      refused.push({
        at: placeOf(path),
        why: `${written} is over ${most.said}: check the number${unit === '' ? '' : ' and the unit of the document'}`,
      })
    else if (least && inside !== 0 && inside < least.value)
      refused.push({
        at: placeOf(path),
        why: `${written} is under ${least.said}, which nobody can measure: check the number${unit === '' ? '' : ' and the unit of the document'}`,
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
    length: { factor: millimetresPer[length], unit: length },
    fine: { factor: micrometresPer[fine], unit: fine },
    mass: { factor: kilogramsPer[length] },
    torque: { factor: newtonMetresPer[length] },
    slope: same,
    temperature: same,
    expansion: same,
    speed: same,
    sliding: { factor: millimetresPer[length], unit: slidingSign[length] },
    hour: same,
    time: same,
    plain: same,
  }
}

/** A size in whichever unit a document may be written in makes the number smallest, or largest. */
export function inAnyUnit(quantity: Quantity, { value }: Size): { low: number; high: number } {
  const numbers = (['mm', 'in'] as const).flatMap((length) =>
    (['um', 'mm', 'mil'] as const).map(
      (fine) => value / conversionsFrom({ length, fine })[quantity].factor,
    ),
  )
  return { low: Math.min(...numbers), high: Math.max(...numbers) }
}
