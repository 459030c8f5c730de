import type { Micrometres } from '../../../mechanics/units'
import type { Train } from '../../../mechanics/train'
import type { Motion } from '../../../mechanics/motion'
import { footMove } from '../../plan/totals'

/** A body whose feet all move by less than this is left alone: no shim or dial shows it. */
export const disturbs: Micrometres = 0.1

/** Indices of the bodies that a plan moves by themselves; riding on a skid that moves does not count. */
export const disturbedBodies = (train: Train, motions: readonly Motion[]): number[] =>
  train.bodies.flatMap((body, b) => {
    const motion = motions[b]
    const moves = body.feet.some((foot) => {
      if (!motion) return false
      const { axial, side, shim } = footMove(body, motion, foot)
      return Math.hypot(axial, side, shim) > disturbs
    })
    return moves ? [b] : []
  })
