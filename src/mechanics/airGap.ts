import { lineThrough, lineValueAt, type Line } from './growth'
import type { Motion } from './motion'
import type { AirGap, Stator } from './stator'
import type { Body } from './train'
import type { Micrometres, Millimetres } from './units'

/** Sideways (+ toward 3 o'clock) and up, um. */
export interface AcrossMove {
  readonly y: Micrometres
  readonly z: Micrometres
}

/** How even an air gap is around. */
export interface GapAround {
  readonly mean: Micrometres
  /** How far the middle of the bore stands from where it is to be, seen from the rotor. */
  readonly off: AcrossMove
  /** Half of what the gaps above and below are more than those at the sides: out of round, which no move mends. */
  readonly outOfRound: Micrometres
  /** The most that one of the four gaps differs from what it is to be, as a part of the mean. */
  readonly part: number
}

/**
 * An air gap after the stator has gone so far against the rotor. A bore that stands higher by e than the axis has a gap
 * larger by e above and smaller by e below (gap = mean + e·u at the outward direction u, for e far smaller than the mean).
 * @param moved how far the stator goes at this place less how far the rotor does
 */
export function gapAround(gap: AirGap, aim: AcrossMove, moved: AcrossMove): GapAround {
  const { top, three, bottom, nine } = gap
  const mean = (top + three + bottom + nine) / 4
  const off = {
    y: (three - nine) / 2 + moved.y - aim.y,
    z: (top - bottom) / 2 + moved.z - aim.z,
  }
  const outOfRound = (top + bottom - three - nine) / 4
  const most = Math.abs(outOfRound) + Math.max(Math.abs(off.y), Math.abs(off.z))
  return { mean, off, outOfRound, part: most / mean }
}

/** Lines along the train, um by x. */
interface AcrossLine {
  readonly y: Line
  readonly z: Line
}

export const acrossAt = ({ y, z }: AcrossLine, x: Millimetres): AcrossMove => ({
  y: lineValueAt(y, x),
  z: lineValueAt(z, x),
})

/**
 * How far the rotor of a machine goes across, by the machine's own motion: what stands on the same base or skid goes
 * along with that.
 */
export function rotorLine(body: Body, motion: Motion): AcrossLine {
  // a machine with a stator has one axis
  const { y, z } = body.axis.left
  return {
    y: { x: body.x0, value: motion.ty - motion.roll * z, slope: motion.sy },
    z: { x: body.x0, value: motion.tz + motion.roll * y, slope: motion.sz },
  }
}

/** How far the stator has to go against the rotor as found: the line nearest to what its gaps are off by; with one place, level. */
export function centringLine(stator: Stator): AcrossLine {
  const still: AcrossMove = { y: 0, z: 0 }
  const line = (way: 'y' | 'z') =>
    lineThrough(
      stator.gaps.map((gap) => ({ x: gap.at, value: -gapAround(gap, stator.aim, still).off[way] })),
    )
  return { y: line('y'), z: line('z') }
}

/** The line through what feet of a stator do. */
export const lineOfFeet = (
  feet: readonly { readonly x: Millimetres; readonly y: Micrometres; readonly z: Micrometres }[],
): AcrossLine => ({
  y: lineThrough(feet.map(({ x, y }) => ({ x, value: y }))),
  z: lineThrough(feet.map(({ x, z }) => ({ x, value: z }))),
})
