import { tol } from '../../mechanics/tolerances'
import type { Train } from '../../mechanics/train'
import type { Motion } from '../../mechanics/motion'
import { footMove } from './totals'

/** Indices of the bodies that a plan moves by themselves; riding on a skid that moves does not count. */
export const disturbedBodies = (train: Train, motions: readonly Motion[]): number[] =>
  train.bodies.flatMap((body, b) => {
    const motion = motions[b]
    const moves = body.feet.some((foot) => {
      if (!motion) return false
      const { axial, side, shim } = footMove(body, motion, foot)
      return Math.hypot(axial, side, shim) > tol.unseen
    })
    return moves ? [b] : []
  })
