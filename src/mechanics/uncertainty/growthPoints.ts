import { tol } from '../tolerances'
import type { Micrometres, Millimetres } from '../units'
import {
  growthQuantities,
  type Body,
  type GrowthPoint,
  type GrowthQuantity,
  type Train,
} from '../train'
import { lineThrough, lineValueAt } from '../growth'
import { growthShared, usualU } from './usual'

/** A growth value at a place of an axis with its standard uncertainty (um). */
export interface DoubtfulGrowth {
  /** Names the point among those of its machine and state. */
  readonly key: string
  readonly x: Millimetres
  readonly value: Micrometres
  readonly u: Micrometres
  readonly axes: readonly ('left' | 'right')[]
  /** Where its uncertainty comes from. */
  readonly by: 'given' | 'usual' | 'interval' | 'not entered'
}

const bothAxes = ['left', 'right'] as const

/** A state in which every growth value of every machine is 0 or absent and no point has a u: the position as read. */
export const isShutDown = (train: Train, state: string): boolean =>
  train.machines.every((machine) =>
    (machine.growth.get(state) ?? []).every(
      (point) =>
        point.u === undefined &&
        growthQuantities.every(
          (quantity) => (point[quantity] ?? 0) === 0 && (point.half[quantity] ?? 0) === 0,
        ),
    ),
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
  const given = points.flatMap((point, i): DoubtfulGrowth[] => {
    const value = point[quantity]
    if (value === undefined) return []
    const axes = point.axis === 'both' ? bothAxes : [point.axis]
    return [{ key: `point ${i}`, x: point.at, value, axes, ...doubtOf(point, quantity, value) }]
  })
  if (quantity === 'axial') return given
  const without = bothAxes.filter((axis) => !given.some(({ axes }) => axes.includes(axis)))
  if (without.length === 0) return given
  return [
    ...given,
    ...endsOf(train, machine, m).map((x, i) => ({
      key: `end ${i}`,
      x,
      value: 0,
      u: usualU.growthMissing,
      axes: without,
      by: 'not entered' as const,
    })),
  ]
}

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
  if (isShutDown(train, state)) return 0
  const points = doubtfulGrowth(train, m, state, quantity).filter(({ axes }) => axes.includes(axis))
  const at = (error: (point: DoubtfulGrowth) => Micrometres) =>
    lineValueAt(lineThrough(points.map((point) => ({ x: point.x, value: error(point) }))), x)
  const shared = at(({ u, value }) => (value < 0 ? -u : u)) * Math.sqrt(growthShared)
  const own = points.map(
    (point) => at((one) => (one === point ? one.u : 0)) * Math.sqrt(1 - growthShared),
  )
  return Math.hypot(shared, ...own)
}

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
function endsOf(train: Train, machine: Body, m: number): Millimetres[] {
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
