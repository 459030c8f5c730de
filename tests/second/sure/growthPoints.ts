import { countedPoints, givenBy, madeOf, riseOf } from '../growth'
import { footRows } from '../limits'
import { statesOf, type GrowthPoint, type Machine, type Train } from '../train'

export type Direction = 'rise' | 'side' | 'axial'

/** What one point says of how an axis grows in one direction (um), and how well it is known. */
export interface Known {
  /** The same point has the same name on both axes and in every state that it bears on. */
  name: string
  at: number
  value: number
  u: number
  /** Half the width of the interval that stands in place of a value. */
  half?: number
}

// common practice, no source
const partOfValue = 0.125
const partOfHeat = 0.2
const least = 10 // um
const unsaid = 20 // um

const valueOf = (p: GrowthPoint, direction: Direction): number | undefined =>
  direction === 'rise' ? riseOf(p) : givenBy(p, direction)

/** How well a point knows what it gives: an interval counts as its middle, JCGM 100, 4.3.7. */
function knownTo(p: GrowthPoint, direction: Direction, value: number): Pick<Known, 'u' | 'half'> {
  const range = p.range?.[direction]
  const half = range && (range[1] - range[0]) / 2
  if (half !== undefined) return { half, u: half / Math.sqrt(3) }
  if (p.u !== undefined) return { u: p.u }
  const heated = direction === 'rise' && p.heat !== undefined
  return { u: Math.hypot((heated ? partOfHeat : partOfValue) * value, least) }
}

/** Where rise and side are doubted that nothing gives: outer rows of feet, or the machine's flex planes. */
function ends(train: Train, machine: Machine): number[] {
  const rows = footRows(machine.feet).map(({ x }) => x)
  const planes = train.couplings.flatMap(({ left, right }) =>
    [left, right].filter((end) => end.machine === machine.id).map(({ plane }) => plane),
  )
  const xs = rows.length > 0 ? rows : planes
  return [...new Set([Math.min(...xs), Math.max(...xs)])]
}

/** Every point that says something of an axis in a state and direction, those that only doubt included. */
export function knownOf(
  train: Train,
  machine: Machine,
  axis: 'left' | 'right',
  state: string,
  direction: Direction,
): Known[] {
  const points = countedPoints(machine, state)
  const given = points.flatMap((p, i): Known[] => {
    const value = valueOf(p, direction)
    if (value === undefined || (p.axis ?? axis) !== axis) return []
    return [{ name: `${state} point ${i}`, at: p.at, value, ...knownTo(p, direction, value) }]
  })
  if (given.length > 0 || direction === 'axial') return given
  return ends(train, machine).map((at) => ({
    name: `${state} unsaid at ${at}`,
    at,
    value: 0,
    u: unsaid,
  }))
}

/** Whether nobody says anything of how the train grows in a state: then it is the shut-down position. */
export function shutDown(train: Train, state: string): boolean {
  const points = train.machines.flatMap((machine) =>
    madeOf(statesOf(train), machine, state).flatMap(([own]) => countedPoints(machine, own)),
  )
  const directions = ['rise', 'side', 'axial'] as const
  const silent = (p: GrowthPoint) =>
    p.u === undefined &&
    p.range === undefined &&
    directions.every((direction) => (valueOf(p, direction) ?? 0) === 0)
  return points.every(silent)
}
