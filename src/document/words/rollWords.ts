import type { TrainDocument } from '../schema'
import { fineText } from '../../language/amounts'
import { millimetresPer } from '../../mechanics/units'
import { machineName, numberAt, saidBody } from '../edits/bodies'
import { towardSide } from '../../language/sides'

/**
 * What freeing the roll of a machine means, in words: how far 1 mrad carries each of its shafts, by
 * dy = −roll·z and dz = roll·y about the plane of its feet, and who has to be asked.
 */
export function rollWords(document: TrainDocument, index: number): string {
  const name = saidBody(machineName(document, index))
  const two = document.machines[index]?.axis !== undefined && hasTwo(document, index)
  const parts = two
    ? [
        `the shaft at its left end ${carried(document, index, ['left'])}`,
        `the one at its right end ${carried(document, index, ['right'])}`,
      ]
    : [`its shaft ${carried(document, index, [])}`]
  const gear = document.machines[index]?.role === 'gearbox' || two
  return (
    `Rolling ${name} moves ${two ? 'both its shafts' : 'its shaft'}: 1 mrad, the side ${towardSide(document, 1)} up, carries ` +
    `${parts.join(', and ')}. ` +
    (gear
      ? `Ask for a tooth contact check of ${name} by name, before and after the roll.`
      : `Ask who knows ${name} whether it may be rolled.`)
  )
}

/** Whether a machine has two axes, as a gear has. */
export const hasTwo = (document: TrainDocument, index: number): boolean =>
  (document.machines[index]?.axis as { left?: unknown } | undefined)?.left !== undefined

function carried(document: TrainDocument, index: number, end: readonly string[]): string {
  const { units } = document
  const inside = { ...units, temperature: units.temperature ?? 'C' }
  const at = (way: string) => numberAt(document, ['machines', index, 'axis', ...end, way])
  const z = at('z')
  if (z === undefined) return 'by an amount that its height decides, which is not entered'
  const mm = millimetresPer[units.length]
  const side = -z * mm
  const rise = (at('y') ?? 0) * mm
  const slides = `${fineText(Math.abs(side), inside)} ${towardSide(document, side)}`
  if (rise === 0) return side === 0 ? 'nowhere' : slides
  const lifts = `${fineText(Math.abs(rise), inside)} ${rise > 0 ? 'up' : 'down'}`
  return side === 0 ? lifts : `${slides} and ${lifts}`
}
