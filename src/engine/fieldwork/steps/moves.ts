import type { Micrometres } from '../../../mechanics/units'
import type { Body } from '../../../mechanics/train'
import { noMotion, type Motion } from '../../../mechanics/motion'
import { footMove } from '../../plan/totals'

export type ActionKind = 'axial' | 'vertical' | 'lateral'

/** The part of a motion that a kind of action makes; the three add up to the motion. */
export function motionPart(motion: Motion, kind: ActionKind): Motion {
  const { tx, ty, tz, sy, sz, roll } = motion
  switch (kind) {
    case 'axial':
      return { ...noMotion, tx }
    case 'vertical':
      return { ...noMotion, tz, sz, roll }
    case 'lateral':
      return { ...noMotion, ty, sy }
  }
}

/** Largest displacement of any foot by a motion (um). */
export function largestMove(body: Body, motion: Motion): Micrometres {
  return Math.max(
    0,
    ...body.feet.flatMap((foot) => {
      const { axial, side, shim } = footMove(body, motion, foot)
      return [Math.abs(axial), Math.abs(side), Math.abs(shim)]
    }),
  )
}

/** A part of a motion (um, mrad); `by` has no unit. */
export const scaled = (motion: Motion, by: number): Motion => ({
  tx: motion.tx * by,
  ty: motion.ty * by,
  tz: motion.tz * by,
  sy: motion.sy * by,
  sz: motion.sz * by,
  roll: motion.roll * by,
})

/** The sum of two motions (um, mrad). */
export const added = (a: Motion, b: Motion): Motion => ({
  tx: a.tx + b.tx,
  ty: a.ty + b.ty,
  tz: a.tz + b.tz,
  sy: a.sy + b.sy,
  sz: a.sz + b.sz,
  roll: a.roll + b.roll,
})

/** What is left to do from one standing to another. */
export const leftOver = (goal: Motion, now: Motion): Motion => added(goal, scaled(now, -1))
