import type { LeftOut } from './terms'
import type { GrowthPoint, Machine } from './train'

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

/** How far a machine's axis moves at x (mm) from shut down to a state (um: along, side, up). */
export function growthAt(
  machine: Machine,
  axis: 'left' | 'right',
  state: string,
  x: number,
  leaveOut?: LeftOut,
): { x: number; y: number; z: number } {
  const points = (machine.growth?.[state] ?? []).filter(
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
