import { toFine, type Micrometres } from '../../../mechanics/units'
import type { TrainDocument } from '../../../document/schema'
import type { Coupling, ReadingSet, Train } from '../../../mechanics/train'
import { readingWithoutZero, sagOf } from '../../../mechanics/readings/equation'
import { outward } from '../../../mechanics/readings/clock'
import { tidy } from '../../../language/tidy'
import { fieldAt, type FieldChange } from './change'

/**
 * What the readings of a coupling turn into when its right machine is raised by `rise` against its
 * left one, both level: nobody has read them, they are today's readings and what the rise does to
 * them. A first reading of exactly 0 stays 0, as on the dial.
 * @returns one changed list of readings (or one changed line) a set, marked as worked out
 */
export function raisedReadings(
  document: TrainDocument,
  train: Train,
  coupling: Coupling,
  rise: Micrometres,
): FieldChange[] {
  if (rise === 0) return []
  return coupling.found.flatMap((set) => {
    const field = fieldOf(set, coupling, rise, train)
    if (field === undefined) return []
    const change = ({ name, to }: { name: string; to: FieldChange['to'] }): FieldChange => {
      const at = `${set.place}.${name}`
      return { at, from: fieldAt(document, at), to }
    }
    return [change(field), change({ name: 'why', to: 'worked out for the plates, not read' })]
  })
}

function fieldOf(set: ReadingSet, coupling: Coupling, rise: Micrometres, train: Train) {
  const fine = (value: Micrometres) => tidy(toFine(value, train.units))
  if (set.kind === 'line')
    return set.offset.z === undefined
      ? undefined
      : { name: 'offset.z', to: fine(set.offset.z + rise) }
  const up = { y: 0, z: rise, sy: 0, sz: 0 }
  // what the rise alone does: the sag is in today's readings already
  const added = set.readings.map(
    ({ hour }) => readingWithoutZero(set, coupling, up, hour) - sagOf(set) * outward(hour).z,
  )
  if (added.every((value) => value === 0)) return undefined
  const first = set.readings.findIndex(({ value }) => value === 0)
  const zero = added[first] ?? 0
  return {
    name: 'readings',
    to: set.readings.map(({ hour, value }, i) => [
      hour,
      i === first ? 0 : fine(value + (added[i] ?? 0) - zero),
    ]),
  }
}
