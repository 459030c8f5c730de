import { slopeText, fineText } from './amounts'
import type { CouplingLine, RotorEnd } from '../mechanics/rotorSag'
import type { DocumentUnits, Millimetres } from '../mechanics/units'

/** "0.12 mm above", "level with". */
const above = (value: number, units: DocumentUnits, what: string): string => {
  const size = fineText(Math.abs(value), units)
  if (size === fineText(0, units)) return `level with ${what}`
  return `${size} ${value > 0 ? 'above' : 'below'} ${what}`
}

/** How the end of a rotor hangs: a sentence without its stop. */
export function rotorSaid(name: string, { rise, slope }: RotorEnd, units: DocumentUnits): string {
  const way = slope < 0 ? 'falling' : 'rising'
  return `the end of ${name} lies ${above(rise, units, 'the line through its bearings')}, ${way} ${slopeText(Math.abs(slope), units)} toward the coupling`
}

/** What faces and rims show: gap at the bottom against the top over a diameter, right rim against the left one. */
export function gapAndOffsetSaid(
  { offset, slope }: CouplingLine,
  diameter: Millimetres | undefined,
  units: DocumentUnits,
): string {
  const rims = `the right one ${above(offset, units, 'the left one')}`
  const open = slope > 0 ? 'bottom' : 'top'
  if (diameter === undefined)
    return `${rims}, faces open at the ${open} by ${slopeText(Math.abs(slope), units)}`
  const gap = fineText(Math.abs(slope) * diameter, units)
  if (gap === fineText(0, units)) return `${rims}, faces parallel`
  return `${rims}, faces open by ${gap} more at the ${open} than opposite`
}

/** Where the bearings of the right rotor stand against the line through those of the left one, drawn on. */
export function bearingsSaid(
  { offset, slope }: CouplingLine,
  at: { readonly near: Millimetres; readonly far: Millimetres },
  units: DocumentUnits,
): string {
  const line = 'that line'
  return `against the line through the bearings of the left rotor, drawn on, the near bearing of the right one stands ${above(offset + slope * at.near, units, line)} and the far one ${above(offset + slope * at.far, units, line)}`
}
