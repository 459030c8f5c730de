import { noMotion, type Motion } from '../../mechanics/motion'
import type { Body, Train } from '../../mechanics/train'
import { fillNormals } from '../../mechanics/uncertainty/normals'
import { usualU, workDoubtOf } from '../../mechanics/uncertainty/usual'
import { tol } from '../../mechanics/tolerances'
import { footMove } from '../plan/totals'
import { unmarked } from './chanceStudy'
import { chanceOf, type Chance } from './interval'

/**
 * Chance that no foot of a body that slides ends with its bolt beyond the edge of its hole: where each bolt stands is
 * unsure along and across, and each row slides by its own error, unless it is keyed.
 * @returns undefined where no body with a hole slides
 */
export function boltChance(
  train: Train,
  motions: readonly Motion[],
  draws: number,
  seed: number,
): Chance | undefined {
  const sliding = slidingBodies(train, motions)
  if (sliding.length === 0) return undefined
  const out = new Uint8Array(draws)
  const drawn = (name: string) => {
    const values = new Float64Array(draws)
    fillNormals(values, seed, name, 0)
    return values
  }
  for (const { body, motion } of sliding) markBeyond(out, train, body, motion, drawn)
  return chanceOf(unmarked(out), draws)
}

/** Bodies with a hole that slide by themselves, with how they move. */
export const slidingBodies = (
  train: Train,
  motions: readonly Motion[],
): { body: Body; motion: Motion }[] =>
  train.bodies.flatMap((body, b) => {
    const motion = motions[b] ?? noMotion
    const slides = body.feet.some((foot) => {
      const { axial, side } = footMove(body, motion, foot)
      return Math.abs(axial) > tol.unseen || Math.abs(side) > tol.unseen
    })
    return slides && body.feet.some(({ hole }) => hole) ? [{ body, motion }] : []
  })

function markBeyond(
  out: Uint8Array,
  train: Train,
  body: Body,
  motion: Motion,
  drawn: (name: string) => Float64Array,
): void {
  const { slide } = workDoubtOf(train.plan.sure)
  body.rows.forEach(({ feet }, r) => {
    const here = feet.flatMap((f) => body.feet[f] ?? [])
    const keyed = !body.may.slide || here.some(({ maySlide }) => !maySlide)
    const row = keyed ? undefined : drawn(`bolts of ${body.id}, slide of row ${r}`)
    for (const foot of here) {
      const { hole } = foot
      if (!hole) continue
      const move = footMove(body, motion, foot)
      const [x, y, u] = [hole.x + move.axial, hole.y + move.side, hole.u ?? usualU.bolt]
      const [along, across] = ['along', 'across'].map((way) =>
        drawn(`bolt of ${body.id}, foot ${foot.id}, ${way}`),
      )
      const edge = (hole.clearance / 2) ** 2
      for (let i = 0; i < out.length; i++) {
        const dx = x + u * (along?.[i] ?? 0)
        const dy = y + u * (across?.[i] ?? 0) + slide * (row?.[i] ?? 0)
        if (dx * dx + dy * dy > edge) out[i] = 1
      }
    }
  })
}
