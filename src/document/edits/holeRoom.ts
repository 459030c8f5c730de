import { tidy } from '../../language/tidy'
import { tol } from '../../mechanics/tolerances'
import type { TrainDocument } from '../schema'

/** A hole as entered, in fine units: play across the diameter, hole centre from bolt centre. */
export interface HoleEntry {
  readonly clearance: number
  readonly x: number
  readonly y: number
}

/** How far a foot can still go each way, in fine units, before less than the reserve is left; 0 or more. */
export interface HoleRoom {
  readonly left: number
  readonly right: number
  readonly nine: number
  readonly three: number
  /** Whether less than the reserve is left now. */
  readonly over: boolean
}

/**
 * The foot carries its hole along, the bolt stands: the hole's centre stays within clearance/2 − reserve
 * of the bolt. Each way is straight along the train or straight across it, from where the hole is.
 * @param reserve like the hole's numbers in the document's fine unit
 */
export function holeRoom({ clearance, x, y }: HoleEntry, reserve: number): HoleRoom {
  const radius = Math.max(0, clearance / 2 - reserve)
  const [across, along] = [chord(radius, x), chord(radius, y)]
  const room = (most: number | undefined, at: number) =>
    most === undefined ? 0 : Math.max(0, most - at)
  return {
    left: room(along, -x),
    right: room(along, x),
    nine: room(across, -y),
    three: room(across, y),
    over: Math.hypot(x, y) > radius * (1 + tol.lastDigits),
  }
}

/** Half the chord of a circle at a distance from its middle; undefined outside it. */
const chord = (radius: number, at: number): number | undefined =>
  Math.abs(at) > radius ? undefined : Math.sqrt(radius * radius - at * at)

/** What a hole moves by in one step of a key or of a drag: a hundredth of a mm, half a mil. */
export const holeStep = ({ units }: TrainDocument): number =>
  ({ um: 10, mm: 0.01, mil: 0.5 })[units.fine]

/** Half the width of the picture of a hole that is not entered yet: 2 mm, in fine units. */
export const emptyReach = ({ units }: TrainDocument): number =>
  ({ um: 2000, mm: 2, mil: 80 })[units.fine]

/** The nearest whole number of steps, without the dust of dividing; value and step in one unit. */
export const snapped = (value: number, step: number): number =>
  tidy(Math.round(value / step) * step)
