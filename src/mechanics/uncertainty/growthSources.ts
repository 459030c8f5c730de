import { growthOf, growthPointsIn, lineThrough, lineValueAt } from '../growth'
import { normalQuantile } from '../normalQuantile'
import { tol } from '../tolerances'
import {
  growthQuantities,
  type Body,
  type GrowthPoint,
  type GrowthQuantity,
  type GrowthSource,
  type Train,
} from '../train'
import type { Micrometres, Millimetres } from '../units'
import { doubtAt, givenGrowth, growthDoubtAt } from './growthPoints'

/** How far an axis moves at a place by the growth in use, and by another source. */
export interface GrowthBeside {
  readonly quantity: GrowthQuantity
  readonly axis: GrowthPoint['axis']
  readonly x: Millimetres
  readonly inUse: Micrometres
  readonly beside: Micrometres
  /** Of the difference: the root of the sum of both squares, since two sources err apart (JCGM 100, 5.1.2). */
  readonly u: Micrometres
  /** The size of the difference in its standard uncertainty; infinite where two differ that are taken as exact. */
  readonly sigmas: number
}

/** A source that stands beside the growth in use of a machine in a state. */
export interface SourceCompared {
  readonly machine: number
  /** Index in `states`. */
  readonly state: number
  readonly source: GrowthSource
  readonly rows: readonly GrowthBeside[]
  /** Standard uncertainties beyond which a difference is more than chance. */
  readonly limit: number
  readonly agree: boolean
}

/** Chance at most that two sound sources are said to differ. */
const differRisk = 0.05

/**
 * Every source that does not count beside the line in use, at the first and the last of its own places: there its line is
 * told by what somebody found. The risk is shared out among the places and directions (Bonferroni), so that it holds
 * however they hang together; for one alone the limit is 1.96.
 */
export const comparedSources = (train: Train): SourceCompared[] =>
  train.machines.flatMap((machine, m) =>
    train.states.flatMap((_, state) =>
      bySource(machine.growthBeside.get(train.states[state]?.id ?? '') ?? []).flatMap((points) => {
        const [first] = points
        const rows = rowsOf(train, m, state, points)
        if (!first || rows.length === 0) return []
        const limit = normalQuantile(1 - differRisk / 2 / rows.length)
        const agree = rows.every(({ sigmas }) => sigmas <= limit)
        return [{ machine: m, state, source: first.source, rows, limit, agree }]
      }),
    ),
  )

/** Points of one kind, date and person, in the order in which they stand. */
function bySource(points: readonly GrowthPoint[]): GrowthPoint[][] {
  const groups = new Map<string, GrowthPoint[]>()
  for (const point of points) {
    const { kind, when = '', by = '' } = point.source
    const key = JSON.stringify([kind, when, by])
    groups.set(key, [...(groups.get(key) ?? []), point])
  }
  return [...groups.values()]
}

function rowsOf(
  train: Train,
  m: number,
  state: number,
  points: readonly GrowthPoint[],
): GrowthBeside[] {
  const machine = train.machines[m]
  const id = train.states[state]?.id
  if (!machine || id === undefined) return []
  const inUse = growthPointsIn(machine, id)
  return growthQuantities.flatMap((quantity) =>
    axesOf(machine, [...points, ...inUse]).flatMap((axis) => {
      const end = axis === 'both' ? 'left' : axis
      const gives = (point: GrowthPoint) =>
        point[quantity] !== undefined && (point.axis === end || point.axis === 'both')
      const own = givenGrowth(points.filter(gives), quantity, id)
      // where nothing is in use there is nothing to compare with
      if (own.length === 0 || !inUse.some(gives)) return []
      const line = lineThrough(own)
      return endsOf(own.map(({ x }) => x)).map((x): GrowthBeside => {
        const used = lineValueAt(growthOf(machine, id, end)[quantity], x)
        const beside = lineValueAt(line, x)
        const u = Math.hypot(
          growthDoubtAt(train, m, id, end, quantity, x),
          doubtAt([{ weight: 1, points: own }], end, x),
        )
        const by = Math.abs(beside - used)
        return { quantity, axis, x, inUse: used, beside, u, sigmas: by === 0 ? 0 : by / u }
      })
    }),
  )
}

/** Both axes at once where neither the machine nor a point tells them apart. */
const axesOf = (machine: Body, points: readonly GrowthPoint[]): GrowthPoint['axis'][] =>
  !machine.twoAxes && points.every(({ axis }) => axis === 'both') ? ['both'] : ['left', 'right']

function endsOf(places: readonly Millimetres[]): Millimetres[] {
  const [first, last] = [Math.min(...places), Math.max(...places)]
  return last - first > tol.sameX ? [first, last] : [first]
}
