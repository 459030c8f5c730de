import { tol } from '../../mechanics/tolerances'
import type { Tradeoff } from '../../engine/studies/tradeoff/tradeoff'

/** A stretch of the axis: these shares lie evenly between two places, 0 the left end and 1 the right. */
interface Stretch {
  readonly shares: readonly [from: number, to: number]
  readonly places: readonly [from: number, to: number]
}

/** Where shares lie on the axis of the curve; its scale may change once, which is marked. */
export interface ShareAxis {
  readonly stretches: readonly Stretch[]
  readonly ticks: readonly number[]
}

/** A floor or an as-found share above this is told on a stretch of its own, or it would squeeze the rest. */
const far = 1.25
/** Part of the axis that the shares one can ask for have, beside what lies far above them. */
const asked = { floorFar: 0.46, standingFar: 0.8 }
/** Ticks nearer than this part of the axis run into each other. */
const apart = 0.15
/** Part that a cut in the axis takes. */
const cut = 0.05

/** Left end of the axis for a share that must be on it: a whole 5 %, with room before the least share. */
export function axisStart({ floor }: Tradeoff, share: number): number {
  return Math.max(0, Math.floor(Math.min(floor, share, tol.noRoomFrom) * 20 - 0.6) / 20)
}

/**
 * Chooses the axis so that what one can ask for is legible, with floor and as-found share always on it:
 * where those lie far above the whole tolerance, they have a second stretch with a scale of its own.
 * @param from left end of the axis
 */
export function shareAxis({ floor, standing }: Tradeoff, from: number): ShareAxis {
  if (floor > far) {
    const before = Math.max(1, floor - 0.15 * (standing - floor))
    const near: Stretch = { shares: [from, 1], places: [0, asked.floorFar] }
    const away: Stretch = { shares: [before, standing], places: [asked.floorFar + cut, 1] }
    const axis = { stretches: [near, away], ticks: round(from, 1, 3) }
    // the last one before the cut is the whole tolerance; what would run into it is left out
    const clear = (share: number) => axisPlace(axis, share) - asked.floorFar > apart
    return { ...axis, ticks: [...axis.ticks, ...round(before, standing, 3).filter(clear)] }
  }
  if (standing > far) {
    const end = floor > 1 ? Math.ceil(floor * 20 + 0.6) / 20 : 1
    const near: Stretch = { shares: [from, end], places: [0, asked.standingFar] }
    const away: Stretch = { shares: [end, standing], places: [asked.standingFar, 1] }
    return { stretches: [near, away], ticks: [...round(from, end, 5), standing] }
  }
  const to = standing > 1 ? Math.ceil(standing * 20 + 0.2) / 20 : 1
  return { stretches: [{ shares: [from, to], places: [0, 1] }], ticks: round(from, to, 6) }
}

/** Place of a share on the axis; beyond its ends the ends. */
export function axisPlace({ stretches }: ShareAxis, share: number): number {
  let place = 0
  for (const { shares, places } of stretches) {
    const [a, b] = shares
    if (share < a) return place === 0 ? places[0] : (place + places[0]) / 2
    const part = Math.min(1, (share - a) / Math.max(tol.noStretch, b - a))
    place = places[0] + part * (places[1] - places[0])
    if (share <= b) return place
  }
  return place
}

/** Least and most share on the axis. */
export const axisEnds = ({ stretches }: ShareAxis): readonly [number, number] => [
  stretches[0]?.shares[0] ?? 0,
  stretches.at(-1)?.shares[1] ?? 1,
]

/** Where the scale changes: from one place to the other, the same where nothing is left out. */
export function changeOf({ stretches }: ShareAxis): readonly [number, number] | undefined {
  const [near, away] = stretches
  return near && away && [near.places[1], away.places[0]]
}

/** At most `most` round shares of a stretch, its ends among them where they are round. */
function round(from: number, to: number, most: number): number[] {
  const steps = [0.05, 0.1, 0.2, 0.25, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000]
  const countBy = (step: number) =>
    Math.floor(to / step + tol.dust) - Math.ceil(from / step - tol.dust) + 1
  const step = steps.find((one) => countBy(one) <= most) ?? to - from
  const first = Math.ceil(from / step - tol.dust)
  return Array.from({ length: Math.max(0, countBy(step)) }, (_, i) => (first + i) * step)
}
