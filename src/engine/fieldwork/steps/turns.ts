import { tol } from '../../../mechanics/tolerances'
import type { Micrometres } from '../../../mechanics/units'
import { otherEnd, type BodyEnd, type EndPlaces } from './endHeights'

/** How far the right end may be above the left one, from where the step began: at least, at most (um). */
export type LeanBand = readonly [low: Micrometres, high: Micrometres]

/** Between where the step began and where it ends, and so much beyond either. */
export function leanBand({ left, right }: EndPlaces, ahead: Micrometres): LeanBand {
  const own = right - left
  return [Math.min(0, own) - ahead, Math.max(0, own) + ahead]
}

/** How much further two ends lean, from where the step began, than a stage beyond what the step itself makes of it (um). */
export const beyondStage = (
  { left, right }: EndPlaces,
  target: EndPlaces,
  stage: Micrometres,
): Micrometres => Math.max(0, Math.abs(right - left) - Math.abs(target.right - target.left) - stage)

/** The lowest that the other end may be while one is so high. */
export const lowestBeside = (
  end: BodyEnd,
  height: Micrometres,
  [low, high]: LeanBand,
): Micrometres => (end === 'left' ? height + low : height - high)

/**
 * From one place of the ends to another by moves of one end at a time, each as far as the other lets it; the fewest of
 * the two that begin at either end.
 * @returns the places after each move; undefined where the ends are in one another's way for more moves than anyone makes
 */
export function inTurns(
  from: EndPlaces,
  to: EndPlaces,
  band: LeanBand,
  first: BodyEnd,
): EndPlaces[] | undefined {
  // an end goes at most the width of the band in one move
  const farthest = Math.max(Math.abs(to.left - from.left), Math.abs(to.right - from.right))
  if (farthest > (band[1] - band[0]) * (tol.mostStops + 1)) return undefined
  const [one, other] = [first, otherEnd(first)].map((end) => turns(from, to, band, end))
  if (!one || !other) return one ?? other
  return other.length < one.length ? other : one
}

function turns(
  from: EndPlaces,
  to: EndPlaces,
  band: LeanBand,
  first: BodyEnd,
): EndPlaces[] | undefined {
  const out: EndPlaces[] = []
  let here = from
  let end = first
  for (let stuck = 0; stuck < 2 && out.length <= 2 * tol.mostStops; end = otherEnd(end)) {
    if (same(here, to)) return out
    const next = { ...here, [end]: towardEnd(here, to, band, end) }
    if (Math.abs(next[end] - here[end]) <= tol.dust) {
      stuck++
      continue
    }
    stuck = 0
    out.push(next)
    here = next
  }
  return same(here, to) ? out : undefined
}

function towardEnd(
  here: EndPlaces,
  to: EndPlaces,
  [low, high]: LeanBand,
  end: BodyEnd,
): Micrometres {
  const [least, most] =
    end === 'left' ? [here.right - high, here.right - low] : [here.left + low, here.left + high]
  return Math.min(most, Math.max(least, to[end]))
}

const same = (a: EndPlaces, b: EndPlaces): boolean =>
  Math.abs(a.left - b.left) <= tol.dust && Math.abs(a.right - b.right) <= tol.dust
