import type { Micrometres, Millimetres, Milliradians } from './units'
import type { Body, Train } from './train'

/** Infinitesimal rigid motion of a body about its reference point (x0, 0, 0 in the plane of its feet). */
export interface Motion {
  readonly tx: Micrometres
  readonly ty: Micrometres
  readonly tz: Micrometres
  readonly sy: Milliradians
  readonly sz: Milliradians
  readonly roll: Milliradians
}

export const noMotion: Motion = { tx: 0, ty: 0, tz: 0, sy: 0, sz: 0, roll: 0 }

/** A point of a body: x along the train, y and z from the body's own feet plane. */
export interface Point {
  readonly x: Millimetres
  readonly y: Millimetres
  readonly z: Millimetres
}

/** How far the six motions of a body carry a point: dx, dy, dz as sums over the motions. */
export type Carry = Readonly<Record<'dx' | 'dy' | 'dz', Partial<Motion>>>

/**
 * How far each motion of a body carries a point, a small rotation about the reference x0:
 * dx = tx - sy*y - sz*z;  dy = ty + sy*(x - x0) - roll*z;  dz = tz + sz*(x - x0) + roll*y,
 * first-order kinematics of a rigid body (textbook form).
 * @param point mm, from the plane of the body's own feet
 * @returns um a um of a translation, um a mrad of a rotation
 */
export function displacementOf(body: Body, point: Point): Carry {
  const arm = point.x - body.x0
  return {
    dx: { tx: 1, sy: -point.y, sz: -point.z },
    dy: { ty: 1, sy: arm, roll: -point.z },
    dz: { tz: 1, sz: arm, roll: point.y },
  }
}

/** The same point as its skid sees it: its height counts from the plane of the skid's feet. */
const onSkid = (body: Body, point: Point): Point => ({ ...point, z: body.base + point.z })

/**
 * The chain of bodies whose motions carry a point of `body`, the body itself first.
 * @param index of the body
 * @param point mm
 * @returns indices of bodies, and um a um or a mrad of their motions
 */
export function carriers(
  train: Train,
  index: number,
  point: Point,
): { body: number; carry: Carry }[] {
  const body = train.bodies[index]
  if (!body) throw new RangeError(`no body ${index}`)
  const own = { body: index, carry: displacementOf(body, point) }
  const skid = body.skid === undefined ? undefined : train.bodies[body.skid]
  if (body.skid === undefined || !skid) return [own]
  return [own, { body: body.skid, carry: displacementOf(skid, onSkid(body, point)) }]
}

export const motionNames = ['tx', 'ty', 'tz', 'sy', 'sz', 'roll'] as const
export type MotionName = (typeof motionNames)[number]

/** Displacement (um) of a point by one body's motion (um, mrad). */
export function displaced(part: Partial<Motion>, motion: Motion): Micrometres {
  return motionNames.reduce((sum, name) => sum + (part[name] ?? 0) * motion[name], 0)
}
