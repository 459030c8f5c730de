import type { TrainDocument } from '../schema'
import type { DocumentUnits } from '../../mechanics/units'
import { converted } from '../converted'
import { quantityAt, withNumbers } from '../numbers'
import { pathFromPlace, withValue } from '../place'
import { workRecordOf } from '../work'

/**
 * Writes a whole document in other units. Nothing drifts: a number of up to 12 digits, as people type
 * them, comes back as it was. Where the conversion lies within the last digits of such a number it is
 * that number; else it keeps all its digits.
 * Pages of the record stay as they were written, with the units they name.
 */
export function switchUnits(document: TrainDocument, to: DocumentUnits): TrainDocument {
  const from: DocumentUnits = { ...document.units, temperature: document.units.temperature ?? 'C' }
  const units = {
    length: to.length,
    fine: to.fine,
    ...((document.units.temperature !== undefined || to.temperature !== 'C') && {
      temperature: to.temperature,
    }),
  }
  const written = withNumbers(document, ({ value, quantity }) =>
    converted(value, quantity, from, to),
  )
  return withSure({ ...written, units }, from, to)
}

/** What was said to be right is so in other units: it is written as the value at its place is. */
function withSure(document: TrainDocument, from: DocumentUnits, to: DocumentUnits): TrainDocument {
  const list = workRecordOf(document.record)?.sure ?? []
  if (list.length === 0) return document
  const sure = list.map((one) => ({
    ...one,
    value: converted(one.value, quantityAt(pathFromPlace(one.at)), from, to),
  }))
  return withValue(document, ['record', 'sure'], sure)
}
