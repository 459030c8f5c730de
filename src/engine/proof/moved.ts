import type { Micrometres, Millimetres } from '../../mechanics/units'
import type { Body, Train } from '../../mechanics/train'

/** Translation (um) and small rotation (mrad) of each body, as a plan claims them. */
export interface ClaimedMotion {
  readonly tx: number
  readonly ty: number
  readonly tz: number
  readonly sy: number
  readonly sz: number
  readonly roll: number
}

export type Vector = readonly [x: number, y: number, z: number]

/**
 * Displacement (um) of a point at `arm` (mm) from the body's reference, t + w x arm, with the
 * rotation vector w = (roll, -pitch, yaw): the textbook form, where the builder of the program has
 * the three components written out.
 */
export function displacement(motion: ClaimedMotion, arm: Vector): Vector {
  const [x, y, z] = arm
  const [wx, wy, wz] = [motion.roll, -motion.sz, motion.sy]
  return [
    motion.tx + (wy * z - wz * y),
    motion.ty + (wz * x - wx * z),
    motion.tz + (wx * y - wy * x),
  ]
}

/**
 * Displacement (um) of a point of a machine by its own motion, and by its skid's where it stands on one.
 * @param index of the machine's body
 * @param point mm, z from the plane of its feet
 */
export function carried(
  train: Train,
  motions: readonly ClaimedMotion[],
  index: number,
  point: { readonly x: Millimetres; readonly y: Millimetres; readonly z: Millimetres },
): Vector {
  const body = train.bodies[index]
  const motion = motions[index]
  if (!body || !motion) throw new RangeError(`no motion for body ${index}`)
  const own = displacement(motion, [point.x - body.x0, point.y, point.z])
  if (body.skid === undefined) return own
  const skid = train.bodies[body.skid]
  const under = motions[body.skid]
  if (!skid || !under) throw new RangeError(`no motion for the skid of ${body.id}`)
  const below = displacement(under, [point.x - skid.x0, point.y, body.base + point.z])
  return [own[0] + below[0], own[1] + below[1], own[2] + below[2]]
}

/**
 * Displacement (um) of a foot by its body's own motion.
 * @param foot index among the body's feet
 */
export function claimedFootMove(body: Body, motion: ClaimedMotion, foot: number): Vector {
  const { x, y } = body.feet[foot] ?? { x: 0, y: 0 }
  return displacement(motion, [x - body.x0, y, 0])
}

/** The largest of some amounts by which limits are passed (um), 0 at least; NaN where one is no number. */
export const worst = (...values: readonly Micrometres[]): Micrometres =>
  values.reduce((a, b) => (b > a || Number.isNaN(b) ? b : a), 0)
