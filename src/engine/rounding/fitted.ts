import { tol } from '../../mechanics/tolerances'
import { solveSymmetric } from '../../mechanics/symmetric'
import type { Micrometres } from '../../mechanics/units'
import type { Body } from '../../mechanics/train'
import type { Motion } from '../../mechanics/motion'
import { footTurns } from './footGroups'

/**
 * A body's motion with its rise, pitch and roll taken from the shims under its feet: the plane
 * through them, by least squares where more than fix it, and through feet that keep their height.
 * Slides that are nothing at a whole row become exactly that.
 */
export function fitted(
  body: Body | undefined,
  motion: Motion,
  changes: readonly Micrometres[],
): Motion {
  if (!body || body.held) return motion
  return { ...slid(body, motion), ...raised(body, changes) }
}

/** Rise, pitch and roll of the plane through the changes (um, mrad). */
function raised(body: Body, changes: readonly Micrometres[]): Pick<Motion, 'tz' | 'sz' | 'roll'> {
  const none = { tz: 0, sz: 0, roll: 0 }
  if (!body.may.rise || changes.every((change) => change === 0)) return none
  const ways = footTurns(body)
  const gram = ways.map((a) => ways.map((b) => dot(a, b)))
  const amounts = solveSymmetric(
    gram,
    ways.map((way) => dot(way, changes)),
  )
  const heights = body.feet.map((_, f) =>
    ways.reduce((sum, way, w) => sum + (amounts[w] ?? 0) * (way[f] ?? 0), 0),
  )
  // heights are those of a plane: rise, pitch and roll follow by the plane's own normal equations
  const arms = body.feet.map(({ x }) => x - body.x0)
  const sides = body.feet.map(({ y }) => y)
  const plane = [
    body.feet.map(() => 1),
    ...(body.may.pitch ? [arms] : []),
    ...(body.may.roll ? [sides] : []),
  ]
  const size = plane.map((way) => Math.sqrt(dot(way, way)))
  const unit = plane.map((way, w) => way.map((value) => value / (size[w] ?? 1)))
  const found = solveSymmetric(
    unit.map((a) => unit.map((b) => dot(a, b))),
    unit.map((way) => dot(way, heights)),
  ).map((value, w) => value / (size[w] ?? 1))
  const [tz = 0, second = 0, third = 0] = found
  return {
    tz,
    sz: body.may.pitch ? second : 0,
    roll: body.may.roll ? (body.may.pitch ? third : second) : 0,
  }
}

function slid(body: Body, motion: Motion): Motion {
  const first = body.rows[0]
  const last = body.rows.at(-1)
  if (!first || !last) return motion
  const at = (x: number) => {
    const value = motion.ty + motion.sy * (x - body.x0)
    return Math.abs(value) < tol.samePlace ? 0 : value
  }
  const [left, right] = [at(first.x), at(last.x)]
  if (left !== 0 && right !== 0) return motion
  const length = last.x - first.x
  const sy = length > 0 && body.may.yaw ? (right - left) / length : 0
  return { ...motion, sy, ty: body.may.slide ? left - sy * (first.x - body.x0) : 0 }
}

const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0)
