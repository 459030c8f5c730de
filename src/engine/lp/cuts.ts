import { tol } from '../../mechanics/tolerances'
import { farPoints } from '../../mechanics/uncertainty/farthest'
import { roomToward } from '../../mechanics/uncertainty/kept'
import { affineValue } from './affine'
import { reach, type Circle, type Cut, type Program, type Row } from './program'

/**
 * The tangents that a program starts with, along the axes: enough to keep a first answer near, and
 * few enough to keep the program small. A circle that moves only sideways needs none lengthwise.
 */
export function firstCuts(program: Program): Cut[] {
  return program.circles.flatMap((circle, c) => {
    const along = circle.u.terms.size > 0 ? [0, Math.PI] : []
    const across = circle.w.terms.size > 0 ? [Math.PI / 2, -Math.PI / 2] : []
    return [...along, ...across].map((angle) => ({ circle: c, angle }))
  })
}

const made = new WeakMap<Program, WeakMap<Cut, Row>>()

/** The row of a tangent, made once: rounds, stages and duals ask for the same ones again and again, and a solver knows rows by their identity. */
export function tangentRow(program: Program, cut: Cut): Row {
  const rows = made.get(program) ?? new WeakMap<Cut, Row>()
  made.set(program, rows)
  const known = rows.get(cut)
  if (known) return known
  const row = cutRow(program, cut)
  rows.set(cut, row)
  return row
}

/** Twice what one rounding of a double may leave, of its size. */
const oneRounding = 2 ** -51

/**
 * A tangent of its circle as a row: every point of the disc fulfils it, to the last bit. Its direction is no unit vector
 * in doubles and its coefficients are rounded, so that the row stands farther out by what that may come to anywhere within
 * the reach of a plan: a bound from its dual is one over the circle itself.
 */
function cutRow(program: Program, cut: Cut): Row {
  const circle = program.circles[cut.circle]
  if (!circle) throw new RangeError(`no circle ${cut.circle}`)
  const [cos, sin] = unit(cut.angle)
  const kept = circle.kept ? { kept: roomToward(circle.kept, cut.angle) } : undefined
  const terms = new Map<number, number>()
  for (const [column, coefficient] of circle.u.terms) terms.set(column, cos * coefficient)
  for (const [column, coefficient] of circle.w.terms)
    terms.set(column, (terms.get(column) ?? 0) + sin * coefficient)
  let rounded = 0
  for (const [column, coefficient] of circle.u.terms)
    rounded += Math.abs(cos * coefficient) * farthestOf(program, column)
  for (const [column, coefficient] of circle.w.terms)
    rounded += Math.abs(sin * coefficient) * farthestOf(program, column)
  for (const [column, coefficient] of circle.radius.terms)
    terms.set(column, (terms.get(column) ?? 0) - coefficient * (1 + oneRounding))
  const sizes =
    Math.abs(circle.radius.constant) +
    Math.abs(cos * circle.u.constant) +
    Math.abs(sin * circle.w.constant) +
    (kept?.kept ?? 0)
  return {
    name: circle.name,
    terms: [...terms].filter(([, coefficient]) => coefficient !== 0),
    lower: -Infinity,
    upper:
      circle.radius.constant -
      (cos * circle.u.constant + sin * circle.w.constant) -
      (kept?.kept ?? 0) +
      oneRounding * (2 * rounded + 4 * sizes),
    meaning: circle.meaning,
    ...kept,
  }
}

/** No motion of a plan is farther from nothing than this (program units). */
function farthestOf({ columns }: Program, column: number): number {
  const { lower = -reach, upper = reach } = columns[column] ?? {}
  return Math.max(Math.min(reach, Math.abs(lower)), Math.min(reach, Math.abs(upper)))
}

/** Exact along the axes, so that the first tangents have no stray terms. */
function unit(angle: number): [number, number] {
  const clean = (value: number) => (Math.abs(value) < tol.onAxis ? 0 : value)
  return [clean(Math.cos(angle)), clean(Math.sin(angle))]
}

/** Where a point of the program lies in the plane of a circle, from nothing: how far, and which way (rad). */
interface Reached {
  readonly distance: number
  readonly angle: number
}

/**
 * The distances at which a point, with the room that is kept around it, may press on its circle: one, or one for each
 * corner of that room; program units.
 */
function reaches(circle: Circle, columns: readonly number[]): Reached[] {
  const at = { y: affineValue(circle.u, columns), z: affineValue(circle.w, columns) }
  return farPoints(at, circle.kept).map(({ y, z }) => ({
    distance: Math.hypot(y, z),
    angle: Math.atan2(z, y),
  }))
}

/** The farthest of them: its way is the direction in which a circle is passed most. */
export const farthestReach = (circle: Circle, columns: readonly number[]): Reached =>
  reaches(circle, columns).reduce((a, b) => (b.distance > a.distance ? b : a))

/** How far a point lies beyond a circle (program units; negative inside). */
export const circleExcess = (circle: Circle, columns: readonly number[]): number =>
  farthestReach(circle, columns).distance - affineValue(circle.radius, columns)

/**
 * New tangents where a solution lies beyond its circles. The answer stands at a corner between two
 * tangents; besides the one through it, two are set where the corners to come would be, which saves
 * rounds. None is set where a tangent already stands. Where room with corners is kept, each corner that
 * lies beyond gets its own.
 * @param columns of the answer (program units)
 * @returns tangents by circle and angle (rad)
 */
export function violatedCuts(
  program: Program,
  cuts: readonly Cut[],
  columns: readonly number[],
): Cut[] {
  const angles = program.circles.map((): number[] => [])
  for (const { circle, angle } of cuts) angles[circle]?.push(angle)
  return program.circles.flatMap((circle, c) => {
    const radius = affineValue(circle.radius, columns)
    const wanted = reaches(circle, columns).flatMap(({ distance, angle }) => {
      const by = distance - radius
      if (by <= circle.slack) return []
      const apart = Math.sqrt(by / distance) * cornerApart
      return by > fineSlack * circle.slack ? [angle, angle - apart, angle + apart] : [angle]
    })
    return wanted
      .filter((at, i) => circle.kept === undefined || !wanted.slice(0, i).some((b) => same(at, b)))
      .filter((at) => angles[c]?.every((angle) => !same(angle, at)))
      .map((at) => ({ circle: c, angle: at }))
  })
}

/** Corners between tangents an angle a apart lie beyond by r a^2 / 8; the next ones stand at a / 4. */
const cornerApart = Math.SQRT1_2
/** Nearer than this many slacks one more tangent is enough. */
const fineSlack = 4

const same = (a: number, b: number): boolean =>
  Math.abs(Math.sin((a - b) / 2)) < tol.sameTangent / 2
