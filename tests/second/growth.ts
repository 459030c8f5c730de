import type { LeftOut } from './terms'
import type { GrowthPoint, Machine, State } from './train'

/** A straight line in x: value at x is `level + slope * (x - at)`. */
interface Slant {
  at: number
  level: number
  slope: number
}

const none: Slant = { at: 0, level: 0, slope: 0 }

/** Least-squares line through points; one point, or points at one x, give their mean. */
function lineThrough(points: { x: number; value: number }[]): Slant {
  if (points.length === 0) return none
  const n = points.length
  const at = points.reduce((sum, p) => sum + p.x, 0) / n
  const level = points.reduce((sum, p) => sum + p.value, 0) / n
  const spread = points.reduce((sum, p) => sum + (p.x - at) ** 2, 0)
  const together = points.reduce((sum, p) => sum + (p.x - at) * (p.value - level), 0)
  const oneX = points.every((p) => Math.abs(p.x - at) < 1e-6)
  return { at, level, slope: oneX ? 0 : together / spread }
}

/** What a point gives of a quantity: the value, or the middle of an interval. */
export function givenBy(p: GrowthPoint, what: 'rise' | 'side' | 'axial'): number | undefined {
  const range = p.range?.[what]
  return range ? (range[0] + range[1]) / 2 : p[what]
}

/** Rise of the point (um): what is given plus height * expansion * temperature change. */
export function riseOf(p: GrowthPoint, leaveOut?: LeftOut): number | undefined {
  const heat = leaveOut === 'growth heat' ? undefined : p.heat
  const given = givenBy(p, 'rise')
  if (given === undefined && heat === undefined) return undefined
  // mm * 1e-6 per degree * degrees, times 1000 for um
  const warmed = heat ? heat.height * heat.expansion * 1e-3 * (heat.to - heat.from) : 0
  return (given ?? 0) + warmed
}

/** The points of a machine in a state that count. */
export const countedPoints = (machine: Machine, state: string, leaveOut?: LeftOut): GrowthPoint[] =>
  (machine.growth?.[state] ?? []).filter(
    (p) => p.use !== false || leaveOut === 'growth that does not count',
  )

/** The states that a machine's growth in a state is made of, and how much of each. */
export function madeOf(
  states: readonly State[],
  machine: Machine,
  state: string,
  leaveOut?: LeftOut,
): [state: string, part: number][] {
  const here = states.find(({ id }) => id === state)
  const own = countedPoints(machine, state, leaveOut).length > 0
  if (!here?.between || own || leaveOut === 'growth between states') return [[state, 1]]
  const { from, to, by } = here.between
  const stated = (id: string) => states.find((one) => one.id === id)?.[by] ?? NaN
  const [a, b, c] = [stated(from), stated(to), stated(state)]
  return [
    [from, (b - c) / (b - a)],
    [to, (c - a) / (b - a)],
  ]
}

/** How far a machine's axis moves at x (mm) from shut down to a state (um: along, side, up). */
export function growthAt(
  states: readonly State[],
  machine: Machine,
  axis: 'left' | 'right',
  state: string,
  x: number,
  leaveOut?: LeftOut,
): { x: number; y: number; z: number } {
  const grown = { x: 0, y: 0, z: 0 }
  for (const [own, part] of madeOf(states, machine, state, leaveOut)) {
    const here = ownGrowthAt(machine, axis, own, x, leaveOut)
    for (const way of ['x', 'y', 'z'] as const) grown[way] += part * here[way]
  }
  return grown
}

/** The same by the points that are given for the state itself. */
function ownGrowthAt(
  machine: Machine,
  axis: 'left' | 'right',
  state: string,
  x: number,
  leaveOut?: LeftOut,
): { x: number; y: number; z: number } {
  const points = countedPoints(machine, state, leaveOut).filter(
    (p) => leaveOut === 'growth of each axis' || (p.axis ?? axis) === axis,
  )
  const value = (of: (p: GrowthPoint) => number | undefined): number => {
    const known = points.flatMap((p) => {
      const v = of(p)
      return v === undefined ? [] : [{ x: p.at, value: v }]
    })
    const line = lineThrough(known)
    return line.level + (leaveOut === 'growth line' ? 0 : line.slope * (x - line.at))
  }
  return {
    x: leaveOut === 'growth axial' ? 0 : value((p) => givenBy(p, 'axial')),
    y: leaveOut === 'growth side' ? 0 : value((p) => givenBy(p, 'side')),
    z: leaveOut === 'growth rise' ? 0 : value((p) => riseOf(p, leaveOut)),
  }
}
