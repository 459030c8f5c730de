import type { CouplingDocument, TrainDocument } from '../schema'
import type { DocumentUnits } from '../../mechanics/units'
import { inSentence } from '../../language/names'
import { fineSaid, slopeSaid } from '../said'
import { towardSide } from '../../language/sides'

/** Names of the two machines of a coupling as they stand in a sentence. */
export function endNames(document: TrainDocument, coupling: CouplingDocument) {
  const name = (end: 'left' | 'right') => {
    const id = coupling[end].machine
    const given = document.machines.find((machine) => machine.id === id)?.name ?? ''
    return given.trim() === '' ? `the ${end} machine` : inSentence(given)
  }
  return { left: name('left'), right: name('right') }
}

/** "the pump 0.30 mm lower than the motor", "level with"; an offset up and down, + up. */
export function riseSaid(
  document: TrainDocument,
  coupling: CouplingDocument,
  z: number,
  units: DocumentUnits,
): string {
  const { left, right } = endNames(document, coupling)
  if (z === 0) return `${right} level with ${left}`
  return `${right} ${fineSaid(z, units)} ${z > 0 ? 'higher' : 'lower'} than ${left}`
}

/**
 * An offset sideways, + toward 3 o'clock.
 * @param y document's fine unit
 */
export function sideSaid(
  document: TrainDocument,
  coupling: CouplingDocument,
  y: number,
  units: DocumentUnits,
): string {
  const { left, right } = endNames(document, coupling)
  if (y === 0) return `${right} in line with ${left} sideways`
  return `${right} ${fineSaid(y, units)} ${towardSide(document, y)}, against ${left}`
}

/** A slope (mrad, mil/in) of the right axis against the left one, going right. */
export function slopeInWords(
  document: TrainDocument,
  coupling: CouplingDocument,
  way: 'y' | 'z',
  slope: number,
  units: DocumentUnits,
): string {
  const { left, right } = endNames(document, coupling)
  if (slope === 0) return `${right} runs straight on from ${left}`
  const size = slopeSaid(slope, units)
  const runs =
    way === 'z'
      ? `${slope > 0 ? 'rises' : 'falls'} ${size}`
      : `runs ${size} ${towardSide(document, slope)}`
  return `going right, ${right} ${runs} against ${left}`
}
