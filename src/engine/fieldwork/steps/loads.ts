import { tol } from '../../../mechanics/tolerances'
import type { Kilograms, Millimetres } from '../../../mechanics/units'
import type { Body, Train } from '../../../mechanics/train'

/** What lifting a body puts on its jacks. */
interface Loads {
  /** The body with what it carries. */
  readonly total: Kilograms
  /** Standing load of each foot, in the order of `feet`. */
  readonly corners: readonly Kilograms[]
  /** Most that one jack carries while an end, or the whole body, is lifted by one jack a foot of that end. */
  readonly jack: Kilograms
  readonly rating?: Kilograms
  /** True where that is more than the jack may carry. */
  readonly over: boolean
  /** What had to be taken for granted. */
  readonly assumed: string
}

/** Names of what has no mass entered, so that loads are not known; or the loads. */
export type LoadsKnown = { readonly loads: Loads } | { readonly missing: readonly string[] }

/**
 * Statics of a rigid body on its feet, each machine's mass in the middle of its own feet. Standing:
 * equally stiff feet, so each carries W/n plus what the moments ask for (with three rows or more,
 * statics alone leave it open). One end lifted: the body turns about the row at the other end, rows
 * between hang free, W (xg - far)/(end - far) on the jacks of that end.
 * @param b index of the body
 * @returns loads in kg
 */
export function loadsOf(train: Train, b: number): LoadsKnown {
  const body = train.bodies[b]
  if (!body) throw new RangeError(`no body ${b}`)
  const parts = [body, ...train.machines.filter(({ skid }) => skid === b)]
  const missing = parts.filter(({ mass }) => mass === undefined).map(({ name }) => name)
  if (missing.length > 0 || body.feet.length === 0) return { missing }
  const total = parts.reduce((sum, { mass = 0 }) => sum + mass, 0)
  const centre = {
    x: parts.reduce((sum, part) => sum + (part.mass ?? 0) * middle(part, 'x'), 0) / total,
    y: parts.reduce((sum, part) => sum + (part.mass ?? 0) * middle(part, 'y'), 0) / total,
  }
  const corners = standingLoads(body, total, centre)
  const jack = Math.max(...endLoads(body, total, centre), 0)
  return {
    loads: {
      total,
      corners,
      jack,
      ...(body.jack !== undefined && { rating: body.jack }),
      over: body.jack !== undefined && jack > body.jack,
      assumed: `mass of each machine in the middle of its feet${body.rows.length > 2 ? '; feet equally stiff, rows between the ends hang free while an end is lifted' : ''}`,
    },
  }
}

const middle = (body: Body, way: 'x' | 'y'): Millimetres =>
  body.feet.length === 0
    ? body.x0
    : body.feet.reduce((sum, foot) => sum + foot[way], 0) / body.feet.length

function standingLoads(
  body: Body,
  total: Kilograms,
  centre: { x: Millimetres; y: Millimetres },
): Kilograms[] {
  const [mx, my] = [middle(body, 'x'), middle(body, 'y')]
  const arms = body.feet.map(({ x, y }) => [x - mx, y - my] as const)
  const sum = (of: (arm: readonly [number, number]) => number) =>
    arms.reduce((all, arm) => all + of(arm), 0)
  const [xx, xy, yy] = [sum(([x]) => x * x), sum(([x, y]) => x * y), sum(([, y]) => y * y)]
  const [gx, gy] = [centre.x - mx, centre.y - my]
  const det = xx * yy - xy * xy
  // Feet in one row, or all on the centre line, carry no moment that way.
  const [ax, ay] =
    det > tol.lastDigits * Math.max(1, xx * yy)
      ? [(gx * yy - gy * xy) / det, (gy * xx - gx * xy) / det]
      : [xx > tol.dust ? gx / xx : 0, yy > tol.dust && xx <= tol.dust ? gy / yy : 0]
  return arms.map(([x, y]) => total * (1 / arms.length + ax * x + ay * y))
}

/** Load of one jack at the left end and at the right end; the heavier side where the mass is off the middle. */
function endLoads(
  body: Body,
  total: Kilograms,
  centre: { x: Millimetres; y: Millimetres },
): Kilograms[] {
  const [left, right] = [body.rows[0], body.rows.at(-1)]
  if (!left || !right) return []
  const ends = left === right ? [left] : [left, right]
  return ends.map((row) => {
    const far = row === left ? right.x : left.x
    const load = left === right ? total : (total * (centre.x - far)) / (row.x - far)
    const ys = row.feet.map((f) => body.feet[f]?.y ?? 0)
    const [low, high] = [Math.min(...ys), Math.max(...ys)]
    if (high - low < tol.dust) return load / ys.length
    const share = Math.max((centre.y - low) / (high - low), (high - centre.y) / (high - low))
    return (load * share * 2) / ys.length
  })
}
