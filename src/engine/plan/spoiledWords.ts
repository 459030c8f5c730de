import { hourName } from '../../language/hours'
import type { Coupling, Train } from '../../mechanics/train'
import { residualTest } from '../../mechanics/readings/residualTest'
import type { Finding } from './answer'

/** A reading that contradicts the others of its coupling, named where they can tell; undefined where none does. */
export function spoiledReading(train: Train, coupling: Coupling): Finding | undefined {
  const test = residualTest(coupling)
  if (!test?.worst) return undefined
  const { worst, alike, risk } = test
  const sets = [...new Set([worst, ...alike].map(({ set }) => set))].sort((a, b) => a - b)
  const chance = `sound readings are accused so once in ${Math.round(1 / risk)} couplings`
  const size = `${Math.abs(worst.w).toFixed(1)} times what chance makes of it`
  if (alike.length === 0)
    return {
      where: placeOf(coupling, worst),
      what: `${coupling.name}: ${nameOf(train, coupling, worst)} does not fit the others, by ${size}; read it again (${chance})`,
    }
  const which =
    sets.length === 1
      ? `of set ${(sets[0] ?? 0) + 1}`
      : `of sets ${sets.map((s) => s + 1).join(', ')}`
  return {
    where: `${coupling.place}.found`,
    what: `${coupling.name}: one reading ${which} does not fit the others, by ${size}, and these readings cannot tell which; read again, at five hours or more (${chance})`,
  }
}

function placeOf({ found, place }: Coupling, at: { set: number; index: number }): string {
  const set = found[at.set]
  return set && set.kind !== 'line' ? `${set.place}.readings[${at.index}]` : (set?.place ?? place)
}

function nameOf(train: Train, { found }: Coupling, at: { set: number; index: number }): string {
  const set = found[at.set]
  const reading = set && set.kind !== 'line' ? set.readings[at.index] : undefined
  return reading
    ? `the reading at ${hourName(train, reading.hour)} of set ${at.set + 1}`
    : `set ${at.set + 1}`
}
