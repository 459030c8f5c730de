import { tol } from './tolerances'
import type { Micrometres, Millimetres, Milliradians } from './units'
import type { Body, GrowthPart, GrowthPoint, GrowthQuantity } from './train'

/** A straight line over x: value at `x`, and its slope. */
export interface Line {
  readonly x: Millimetres
  readonly value: Micrometres
  readonly slope: Milliradians
}

/** Value of a line (um) at x (mm). */
export const lineValueAt = (line: Line, x: Millimetres): Micrometres =>
  line.value + line.slope * (x - line.x)

/** How far an axis moves from the shut-down position to a state; lines along x. */
export interface AxisGrowth {
  readonly rise: Line
  readonly side: Line
  readonly axial: Line
}

const none: Line = { x: 0, value: 0, slope: 0 }

/** What a body's growth in a state is made of: its own there, or so much of each of two states. */
export const growthParts = (body: Body, state: string): readonly GrowthPart[] =>
  body.growthBetween.get(state) ?? [{ state, weight: 1 }]

/** All points that a body's growth in a state rests on, of both states where it lies between two. */
export const growthPointsIn = (body: Body, state: string): GrowthPoint[] =>
  growthParts(body, state).flatMap((part) => [...(body.growth.get(part.state) ?? [])])

/**
 * Growth of the axis that a coupling meets: a machine's right axis at the coupling on its right.
 * @returns lines along x (mm): values in um, slopes in mrad
 */
export function growthOf(body: Body, state: string, axis: 'left' | 'right'): AxisGrowth {
  const along = (quantity: GrowthQuantity) =>
    weighted(
      growthParts(body, state).map(({ state: own, weight }) => {
        const points = (body.growth.get(own) ?? []).filter(
          (point) => point.axis === axis || point.axis === 'both',
        )
        return { line: fit(points, quantity), weight }
      }),
    )
  return { rise: along('rise'), side: along('side'), axial: along('axial') }
}

/** A sum of lines, each times its weight; told at the place of the first. */
export function weighted(lines: readonly { readonly line: Line; readonly weight: number }[]): Line {
  const [first] = lines
  if (!first) return none
  if (lines.length === 1 && first.weight === 1) return first.line
  const { x } = first.line
  return {
    x,
    value: lines.reduce((sum, { line, weight }) => sum + weight * lineValueAt(line, x), 0),
    slope: lines.reduce((sum, { line, weight }) => sum + weight * line.slope, 0),
  }
}

/** A point takes part only in what it gives; a quantity that no point gives is 0. */
function fit(points: readonly GrowthPoint[], quantity: GrowthQuantity): Line {
  return lineThrough(
    points.flatMap((point) => {
      const value = point[quantity]
      return value === undefined ? [] : [{ x: point.at, value }]
    }),
  )
}

/**
 * One point is a constant, more are a least-squares line; points that all stand at one x give their
 * mean; none are a line of 0.
 */
export function lineThrough(
  given: readonly { readonly x: Millimetres; readonly value: Micrometres }[],
): Line {
  if (given.length === 0) return none
  const mean = (list: readonly number[]) => list.reduce((a, b) => a + b, 0) / list.length
  const x = mean(given.map((point) => point.x))
  const value = mean(given.map((point) => point.value))
  const spread = given.reduce((sum, point) => sum + (point.x - x) ** 2, 0)
  const together = given.every((point) => Math.abs(point.x - (given[0]?.x ?? 0)) <= tol.sameX)
  if (together) return { x, value, slope: 0 }
  const slope =
    given.reduce((sum, point) => sum + (point.x - x) * (point.value - value), 0) / spread
  return { x, value, slope }
}
