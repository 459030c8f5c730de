import { centred, endwiseLimits } from '../endwise'
import type { Joint } from './joints'

/** One tolerance of a joint as sums of its five numbers. */
export interface Check {
  what: 'left plane' | 'right plane' | 'offset' | 'angle' | 'gap' | 'stretch' | 'float'
  /** Of a limit along the train: what of the gap off what is wanted lies in its middle (um). */
  middle: number
  /** Parts of offset and slope, for y and z alike; none along the train. */
  offset: number
  slope: number
  limit: number
  round: boolean
}

/** What a check sees: y and z, or the gap alone (mrad or um). */
export function seen(check: Check, numbers: Float64Array, first: number): [number, number] {
  const at = (k: number) => numbers[first + k] ?? 0
  if (isAlong(check.what)) return [at(4), 0]
  const { offset, slope } = check
  return [offset * at(0) + slope * at(2), offset * at(1) + slope * at(3)]
}

/** Every check of a coupling in a state, each at its full limit there. */
export function checksOf({ c, state }: Joint): Check[] {
  if (c.disengaged?.includes(state.id)) return []
  const { flex, offset, angle, shape } = c.tolerance
  const factor = state.tolerance ?? 1
  const round = shape === 'round'
  const span = c.right.plane - c.left.plane
  const checks: Check[] = []
  const add = (
    what: Check['what'],
    limit: number | undefined,
    offsetPart: number,
    slope: number,
  ) => {
    if (limit === undefined) return
    const inLength = what !== 'gap'
    checks.push({
      what,
      middle: 0,
      offset: offsetPart,
      slope,
      limit: limit * factor,
      round: round && inLength,
    })
  }
  // d(q) / span and -d(p) / span, with d at mid-span and half a span of slope from there
  add('left plane', flex, 1 / span, 0.5)
  add('right plane', flex, -1 / span, 0.5)
  add('offset', offset, 1, 0)
  add('angle', angle, 0, 1)
  add('gap', c.axial && c.axial.tolerance * 1000, 0, 0)
  const { axial } = c
  if (!axial) return checks
  const along = (check: Check, middle: number): Check => ({ ...check, middle: middle * 1000 })
  return [
    ...checks.map((check) => (check.what === 'gap' ? along(check, centred(axial)) : check)),
    ...endwiseLimits(axial).map(({ what, middle, half }) =>
      along({ what, middle, offset: 0, slope: 0, limit: half * 1000, round: false }, middle),
    ),
  ]
}

const isAlong = (what: Check['what']): boolean =>
  what === 'gap' || what === 'stretch' || what === 'float'

// a plan may stand on the edge of a tolerance, and rounding must not push it out
const edge = 1 + 1e-6

/** Whether a check is met where it sees this. */
export function met({ round, limit, middle }: Check, along: number, z: number): boolean {
  const y = along - middle
  return (round ? Math.hypot(y, z) : Math.max(Math.abs(y), Math.abs(z))) <= limit * edge
}
