import type { Micrometres } from '../../../mechanics/units'
import type { Body, Train } from '../../../mechanics/train'
import { noMotion, type Motion } from '../../../mechanics/motion'
import { lifted, type EndPlaces } from './endHeights'
import { eachLimit, limitKey, touchedBy, type LimitAt, type LimitPassed } from './limits'

/** A limit in one direction while a body stands on its jacks, linear in the heights of its ends. */
interface JackLimit {
  readonly at: LimitAt
  readonly room: number
  /** How far it is passed where the step begins; more for each um of an end; more once the roll is made. */
  readonly begins: number
  readonly left: number
  readonly right: number
  readonly rolls: number
}

/** Heights apart enough for the slopes of limits in um and mrad to keep their digits (um). */
const apart = 1000

/**
 * Every limit of a body that is lifted, and of what it carries. Up and down, pitch and roll alone change: limits of
 * points are linear in them, and a bolt stays where it is in its hole. A foot on a jack is not on its pack, so no most
 * pack bounds it.
 * @param motions where all bodies stand before the step
 * @param piece the step's own motion
 */
export function jackLimits(
  train: Train,
  body: Body,
  motions: readonly Motion[],
  piece: Motion,
): JackLimit[] {
  const b = train.bodies.indexOf(body)
  const bodies = touchedBy(train, b)
  const start = motions[b] ?? noMotion
  const there = [...motions]
  const measured = (ends: EndPlaces, rolled: boolean) => {
    const out: { at: LimitAt; by: number; room: number }[] = []
    there[b] = lifted(body, start, piece, ends, rolled)
    eachLimit(train, there, bodies, (at, by, room) => out.push({ at, by, room }))
    return out
  }
  const begins = measured({ left: 0, right: 0 }, false)
  const left = measured({ left: apart, right: 0 }, false)
  const right = measured({ left: 0, right: apart }, false)
  const rolled = measured({ left: 0, right: 0 }, true)
  return begins.flatMap(({ at, by, room }, i) => {
    const more = (other: typeof begins) => (other[i]?.by ?? by) - by
    if (at.limit === 'maximum pack' || by === -Infinity) return []
    const slopes = { left: more(left) / apart, right: more(right) / apart, rolls: more(rolled) }
    return [{ at, room, begins: by, ...slopes }]
  })
}

/** What is passed at any of some places of the ends, the worst of each limit. */
export function passedOnJacks(
  limits: readonly JackLimit[],
  places: readonly { readonly ends: EndPlaces; readonly rolled: boolean }[],
): LimitPassed[] {
  const worst = new Map<string, LimitPassed>()
  for (const { at, room, begins, left, right, rolls } of limits) {
    let by: Micrometres = -Infinity
    for (const { ends, rolled } of places)
      by = Math.max(by, begins + left * ends.left + right * ends.right + (rolled ? rolls : 0))
    if (by <= room) continue
    const key = limitKey(at)
    if (by > (worst.get(key)?.by ?? 0)) worst.set(key, { ...at, by })
  }
  return [...worst.values()]
}
