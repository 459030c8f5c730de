import type { Micrometres } from '../../../mechanics/units'
import type { Body } from '../../../mechanics/train'
import type { Motion } from '../../../mechanics/motion'
import { footMove } from '../../plan/totals'
import { added, scaled } from './moves'

export type BodyEnd = 'left' | 'right'

export const otherEnd = (end: BodyEnd): BodyEnd => (end === 'left' ? 'right' : 'left')

/** How far the ends of a body have gone since a step began, in the middle of their rows, + up or toward 3 o'clock (um). */
export type EndPlaces = Readonly<Record<BodyEnd, Micrometres>>

/** Where the rows at the ends of a body stand (mm); without feet, its reference. */
export const endsOf = (body: Body): Readonly<Record<BodyEnd, number>> => ({
  left: body.rows[0]?.x ?? body.x0,
  right: body.rows.at(-1)?.x ?? body.x0,
})

/** How far a motion carries the ends, without roll. */
export function endMoves(body: Body, motion: Motion, way: 'shim' | 'side'): EndPlaces {
  const { left, right } = endsOf(body)
  const at = (x: number) => footMove(body, { ...motion, roll: 0 }, { x, y: 0 })[way]
  return { left: at(left), right: at(right) }
}

/**
 * A body on its jacks: its ends so high above where they stood, rolled already or not yet. A body on one row of feet
 * has one end, and pitches as far as its move has gone.
 * @param start own motion before the step; `piece` the whole step (um, mrad)
 */
export function lifted(
  body: Body,
  start: Motion,
  piece: Motion,
  { left, right }: EndPlaces,
  rolled: boolean,
): Motion {
  const x = endsOf(body)
  const span = x.right - x.left
  const pitch = span > 0 ? (right - left) / span : rolled ? piece.sz : 0
  return added(start, {
    ...scaled(piece, 0),
    tz: left + pitch * (body.x0 - x.left),
    sz: pitch,
    roll: rolled ? piece.roll : 0,
  })
}
