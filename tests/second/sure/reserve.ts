import type { Train } from '../train'
import { seen, type Check } from './checks'
import { ofAnyPlan, spreadIn, type Covariance } from './covariance'
import { influences } from './influences'
import { parts, type Joint } from './joints'

/** How much of a tolerance is kept free in the direction (cos, sin), as a share of its limit. */
export type Reserve = (cos: number, sin: number) => number

/** What one end of an interval of growth does to a check, from its middle. */
type Segment = readonly [y: number, z: number]

/** Every interval of growth as the segment along which it moves what a check sees. */
function segments(train: Train, joint: Joint, check: Check): Segment[] {
  return influences(train, joint).flatMap(({ known, effects }): Segment[] => {
    if (known.half === undefined) return []
    const five = new Float64Array(parts.length)
    for (const { to, by } of effects) five[to - joint.first] = by * known.half
    return [seen(check, five, 0)]
  })
}

/**
 * What the guard keeps free of a check: k standard uncertainties in every direction; and what intervals
 * of growth may add there, which is exact, for the farthest point of a sum of segments in a direction is
 * the sum of their farthest points.
 */
function reserveOf(
  guard: number,
  covariance: Covariance,
  moved: Segment[],
  limit: number,
): Reserve {
  return (cos, sin) => {
    const reach = moved.reduce((sum, [y, z]) => sum + Math.abs(cos * y + sin * z), 0)
    const spread = guard === 0 ? 0 : guard * spreadIn(covariance, cos, sin)
    return (spread + reach) / limit
  }
}

/** The reserves of a train (in mm and um) by coupling, state and check; none where the plan asks for none. */
export function reservesOf(
  train: Train,
): (coupling: string, state: string, what: Check['what']) => Reserve | undefined {
  const { guard = 0, worst = false } = train.plan ?? {}
  const by = new Map<string, Reserve>()
  const key = (...names: string[]) => JSON.stringify(names)
  for (const { joint, check, covariance } of guard > 0 || worst ? ofAnyPlan(train) : []) {
    const moved = worst ? segments(train, joint, check) : []
    const reserve = reserveOf(guard, covariance, moved, check.limit)
    by.set(key(joint.c.id, joint.state.id, check.what), reserve)
  }
  return (...names) => by.get(key(...names))
}
