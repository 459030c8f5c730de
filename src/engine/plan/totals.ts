import type { Body, Train } from '../../mechanics/train'
import type { Totals } from './answer'
import { displacementOf, displaced, type Motion } from '../../mechanics/motion'

/**
 * A foot's displacement by its body's own motion (um).
 * @param motion um, mrad
 * @param foot its place (mm)
 */
export function footMove(body: Body, motion: Motion, foot: { x: number; y: number }): Totals {
  const parts = displacementOf(body, { x: foot.x, y: foot.y, z: 0 })
  return {
    shim: displaced(parts.dz, motion),
    side: displaced(parts.dy, motion),
    axial: displaced(parts.dx, motion),
  }
}

/** Unweighted sums (um): shim over feet, side over foot rows, axial over bodies. */
export function totalsOf(train: Train, motions: readonly Motion[]): Totals {
  const total = { shim: 0, side: 0, axial: 0 }
  train.bodies.forEach((body, b) => {
    const motion = motions[b]
    if (!motion) return
    for (const foot of body.feet) total.shim += Math.abs(footMove(body, motion, foot).shim)
    for (const row of body.rows)
      total.side += Math.abs(footMove(body, motion, { x: row.x, y: 0 }).side)
    total.axial += Math.abs(motion.tx)
  })
  return total
}
