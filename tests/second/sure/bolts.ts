import type { Foot } from '../train'
import { atFoot, slides, type Motion, type Standing } from './bodies'
import { source, type Source } from './source'

/** A bolt of a body that slides: where it should end in its hole, and the place of its two errors. */
export interface Bolt {
  foot: Foot
  standing: Standing
  x: number
  y: number
  radius: number
  first: number
}

const usual = 200 // um: a bolt may stand anywhere in its hole
const edge = 1e-3 // um: a plan may stand on the edge of a hole, and rounding must not push it out

/** Every bolt that a slide may bring to the edge of its hole; the numbers of its errors begin at `from`. */
export function boltsOf(
  all: readonly Standing[],
  motionOf: (standing: Standing) => Motion,
  from: number,
): Bolt[] {
  return all
    .filter((standing) => slides(standing, motionOf(standing)))
    .flatMap((standing) => standing.body.feet.map((foot) => ({ standing, foot })))
    .flatMap(({ standing, foot }) => (foot.hole ? [{ standing, foot, hole: foot.hole }] : []))
    .map(({ standing, foot, hole }, i) => {
      const { x, y } = atFoot(motionOf(standing), standing, foot)
      return {
        standing,
        foot,
        x: (hole.x ?? 0) + x,
        y: (hole.y ?? 0) + y,
        radius: hole.clearance / 2,
        first: from + 2 * i,
      }
    })
}

/** How far each bolt may stand from where it was thought to be, along and across. */
export const boltErrors = (bolts: readonly Bolt[]): Source[] =>
  bolts.flatMap(({ foot, standing, first }) =>
    [0, 1].map((way) =>
      source('bolts', standing.body.id, [{ to: first + way, by: foot.hole?.u ?? usual }]),
    ),
  )

/** Whether every bolt is within its hole where its errors are these. */
export const boltsFit = (bolts: readonly Bolt[], errors: Float64Array): boolean =>
  bolts.every(
    ({ x, y, radius, first }) =>
      Math.hypot(x + (errors[first] ?? 0), y + (errors[first + 1] ?? 0)) <= radius + edge,
  )
