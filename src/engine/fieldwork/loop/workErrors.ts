import type { Micrometres } from '../../../mechanics/units'
import type { Train } from '../../../mechanics/train'
import { noMotion, type Motion } from '../../../mechanics/motion'
import { couplingMotions } from '../../../mechanics/misalignment/couplingMotion'
import type { Misalignment } from '../../../mechanics/readings/equation'
import { meanPlaneOf } from './actual'

/** Standard deviations of the work: how far a pack is from its stamp and a slide from its dial. Common practice, no source. */
export const workDoubt: { readonly shim: Micrometres; readonly side: Micrometres } = {
  shim: 10,
  side: 20,
}

/** Which of its ways a body is worked on. */
export interface Worked {
  readonly shims: boolean
  readonly slides: boolean
}

/**
 * What one standard deviation at each foot and each row by itself does to every coupling.
 * @returns for each coupling a change for each of these errors, which are independent of each other
 */
export function workErrors(train: Train, worked: (body: number) => Worked): Misalignment[][] {
  const errors: Motion[][] = train.bodies.flatMap((body, b) => {
    const { shims, slides } = worked(b)
    const alone = (motion: Motion) => train.bodies.map((_, i) => (i === b ? motion : noMotion))
    const byShims = body.feet.map((_, f) => {
      const [tz = 0, sz = 0, roll = 0] = meanPlaneOf(
        body.feet.map(({ x, y }, i) => ({
          x: x - body.x0,
          y,
          value: i === f ? workDoubt.shim : 0,
        })),
      )
      return alone({ ...noMotion, tz, sz, roll })
    })
    const bySlides = body.rows.map((_, r) => {
      const [ty = 0, sy = 0] = meanPlaneOf(
        body.rows.map(({ x }, i) => ({
          x: x - body.x0,
          y: 0,
          value: i === r ? workDoubt.side : 0,
        })),
      )
      return alone({ ...noMotion, ty, sy })
    })
    return [...(shims ? byShims : []), ...(slides ? bySlides : [])]
  })
  const moved = errors.map((motions) => couplingMotions(train, motions))
  return train.couplings.map((_, c) => moved.flatMap((all) => all[c]?.misalignment ?? []))
}

/** Variance of a quantity of a coupling by such errors. */
export const varianceOf = (
  errors: readonly Misalignment[],
  of: (d: Misalignment) => number,
): number => errors.reduce((sum, d) => sum + of(d) ** 2, 0)
