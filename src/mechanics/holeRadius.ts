import type { Micrometres } from './units'
import type { Hole } from './train'

/**
 * Radius of the circle around the bolt that the hole centre may not leave: half the clearance less
 * the reserve. Where the bolt is already beyond it, the circle through the present position, so that
 * standing still stays allowed.
 */
export function holeRadius(hole: Hole, reserve: Micrometres): Micrometres {
  return Math.max(hole.clearance / 2 - reserve, Math.hypot(hole.x, hole.y))
}
