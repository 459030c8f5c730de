import { tol } from '../tolerances'
import type { Micrometres, Millimetres } from '../units'
import {
  growthQuantities,
  type Body,
  type GrowthPoint,
  type GrowthQuantity,
  type Train,
} from '../train'
import {
  growthParts,
  growthPointsIn,
  lineThrough,
  lineValueAt,
  weighted,
  type Line,
} from '../growth'
import { growthShared, usualU } from './usual'

/** A growth value at a place of an axis with its standard uncertainty (um). */
export interface DoubtfulGrowth {
  /** Names the point among those of its machine. */
  readonly key: string
  readonly x: Millimetres
  readonly value: Micrometres
  readonly u: Micrometres
  readonly axes: readonly ('left' | 'right')[]
  /** Where its uncertainty comes from. */
  readonly by: 'given' | 'usual' | 'interval' | 'not entered'
}

const bothAxes = ['left', 'right'] as const

/**
 * A state in which every growth value of every machine is 0 or absent and no point has a u: the position as read. Of a
 * machine that has none of its own there, what stands between two states counts.
 */
export const isShutDown = (train: Train, state: string): boolean =>
  train.machines.every((machine) =>
    growthPointsIn(machine, state).every(
      (point) =>
        point.u === undefined &&
        growthQuantities.every(
          (quantity) => (point[quantity] ?? 0) === 0 && (point.half[quantity] ?? 0) === 0,
        ),
    ),
  )

/** Points that count for so much in a state. */
export interface DoubtfulPart {
  readonly weight: number
  readonly points: readonly DoubtfulGrowth[]
}

/**
 * The same for what makes up a state: its own points, or those of the two states that it lies between. What is taken as
 * shut down does not err.
 */
const doubtfulParts = (
  train: Train,
  m: number,
  state: string,
  quantity: GrowthQuantity,
): DoubtfulPart[] => {
  const machine = train.machines[m]
  if (!machine) throw new RangeError(`no machine ${m}`)
  return growthParts(machine, state).map((part) => ({
    weight: part.weight,
    points: isShutDown(train, part.state) ? [] : doubtfulGrowth(train, m, part.state, quantity),
  }))
}

/** That of every state, in the order of `train.states`. */
export const doubtfulStates = (train: Train, m: number, quantity: GrowthQuantity) =>
  train.states.map(({ id }) => doubtfulParts(train, m, id, quantity))

/** Every point of a machine's states once, in their order. */
export const doubtfulPointsOf = (
  states: readonly (readonly DoubtfulPart[])[],
): DoubtfulGrowth[] => [
  ...new Map(
    states.flatMap((parts) =>
      parts.flatMap(({ points }) => points.map((point) => [point.key, point] as const)),
    ),
  ).values(),
]

/** The line of errors at the points of parts, on one axis. */
export const errorLine = (
  parts: readonly DoubtfulPart[],
  axis: 'left' | 'right',
  error: (point: DoubtfulGrowth) => Micrometres,
): Line =>
  weighted(
    parts.map(({ weight, points }) => ({
      weight,
      line: lineThrough(
        points
          .filter(({ axes }) => axes.includes(axis))
          .map((point) => ({ x: point.x, value: error(point) })),
      ),
    })),
  )

/**
 * What a machine's growth in a state rests on, in one direction: the points that give it, and where no point gives a
 * rise or a side on an axis, 0 at the machine's first and last row of feet (without feet: at its flex planes).
 * @param m index of the machine
 */
export function doubtfulGrowth(
  train: Train,
  m: number,
  state: string,
  quantity: GrowthQuantity,
): DoubtfulGrowth[] {
  const machine = train.machines[m]
  if (!machine) throw new RangeError(`no machine ${m}`)
  const points = machine.growth.get(state) ?? []
  const given = givenGrowth(points, quantity, state)
  if (quantity === 'axial') return given
  const without = bothAxes.filter((axis) => !given.some(({ axes }) => axes.includes(axis)))
  if (without.length === 0) return given
  return [
    ...given,
    ...growthEndsOf(train, machine, m).map((x, i) => ({
      key: `${state}, end ${i}`,
      x,
      value: 0,
      u: usualU.growthMissing,
      axes: without,
      by: 'not entered' as const,
    })),
  ]
}

/** What points give in one direction. */
export const givenGrowth = (
  points: readonly GrowthPoint[],
  quantity: GrowthQuantity,
  state: string,
): DoubtfulGrowth[] =>
  points.flatMap((point, i): DoubtfulGrowth[] => {
    const value = point[quantity]
    if (value === undefined) return []
    const axes = point.axis === 'both' ? bothAxes : [point.axis]
    const key = `${state}, point ${i}`
    return [{ key, x: point.at, value, axes, ...doubtOf(point, quantity, value) }]
  })

/**
 * Standard uncertainty of how far a machine's axis moves in a state at a place along it: what is shared by all its
 * points, and each one's own, through the line that the points make.
 */
export function growthDoubtAt(
  train: Train,
  m: number,
  state: string,
  axis: 'left' | 'right',
  quantity: GrowthQuantity,
  x: Millimetres,
): Micrometres {
  const parts = doubtfulParts(train, m, state, quantity)
  return doubtAt(parts, axis, x)
}

/** The same of the line that points of one or more states make. */
export function doubtAt(
  parts: readonly DoubtfulPart[],
  axis: 'left' | 'right',
  x: Millimetres,
): Micrometres {
  const at = (error: (point: DoubtfulGrowth) => Micrometres) =>
    lineValueAt(errorLine(parts, axis, error), x)
  const shared = at(sharedError) * Math.sqrt(growthShared)
  const own = parts
    .flatMap(({ points }) => points)
    .map((point) => at((one) => (one === point ? one.u : 0)) * Math.sqrt(1 - growthShared))
  return Math.hypot(shared, ...own)
}

/** What is wrong alike at every point of a machine, with the sign of the value. */
export const sharedError = ({ u, value }: DoubtfulGrowth): Micrometres => (value < 0 ? -u : u)

function doubtOf(
  point: GrowthPoint,
  quantity: GrowthQuantity,
  value: Micrometres,
): Pick<DoubtfulGrowth, 'u' | 'by'> {
  const half = point.half[quantity]
  // an interval in which any value is as likely as another (JCGM 100, 4.3.7)
  if (half !== undefined) return { u: half / Math.sqrt(3), by: 'interval' }
  if (point.u !== undefined) return { u: point.u, by: 'given' }
  const part = quantity === 'rise' && point.heated ? usualU.heatPart : usualU.growthPart
  return { u: Math.hypot(part * value, usualU.growthLeast), by: 'usual' }
}

/** x of the first and the last row of feet, or of the flex planes of a machine without feet. */
export function growthEndsOf(train: Train, machine: Body, m: number): Millimetres[] {
  const places =
    machine.rows.length > 0
      ? machine.rows.map(({ x }) => x)
      : train.couplings.flatMap(({ left, right, p, q }) => [
          ...(right === m ? [q] : []),
          ...(left === m ? [p] : []),
        ])
  const [first, last] = [Math.min(...places), Math.max(...places)]
  return last - first > tol.sameX ? [first, last] : [first]
}
