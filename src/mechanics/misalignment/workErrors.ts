import { tol } from '../tolerances'
import type { Micrometres } from '../units'
import type { Body, Train } from '../train'
import { meanPlaneOf } from '../meanPlane'
import { noMotion, type Motion } from '../motion'
import type { Misalignment } from '../readings/equation'
import { couplingMotions } from './couplingMotion'
import type { CouplingMotion } from './shares'

/** Standard deviations of the work: how far a pack is from its stamp and a slide from its dial. Common practice, no source. */
export const workDoubt: { readonly shim: Micrometres; readonly side: Micrometres } = {
  shim: 10,
  side: 20,
}

/** Which of its ways a body is worked on. */
interface Worked {
  readonly shims: boolean
  readonly slides: boolean
}

/** Which ways bodies are worked on to make these motions, as far as a dial can show. */
export const workedBy =
  (train: Train, motions: readonly Motion[]) =>
  (b: number): Worked => {
    const { feet, x0 }: Pick<Body, 'feet' | 'x0'> = train.bodies[b] ?? { feet: [], x0: 0 }
    const { ty, tz, sy, sz, roll } = motions[b] ?? noMotion
    return {
      shims: feet.some(({ x, y }) => Math.abs(tz + sz * (x - x0) + roll * y) > tol.unseen),
      slides: feet.some(({ x }) => Math.abs(ty + sy * (x - x0)) > tol.unseen),
    }
  }

/**
 * What one standard deviation at each foot and each row by itself does to all bodies.
 * @returns a motion of every body for each of these errors, which are independent of each other
 */
export function workMotions(train: Train, worked: (body: number) => Worked): Motion[][] {
  return train.bodies.flatMap((body, b) => {
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
}

/**
 * The same on every coupling.
 * @returns for each coupling a change for each of these errors
 */
export function workErrors(train: Train, worked: (body: number) => Worked): CouplingMotion[][] {
  const moved = workMotions(train, worked).map((motions) => couplingMotions(train, motions))
  return train.couplings.map((_, c) => moved.flatMap((all) => all[c] ?? []))
}

/** Variance of a quantity of a coupling by such errors. */
export const varianceOf = (
  errors: readonly CouplingMotion[],
  of: (d: Misalignment) => number,
): number => errors.reduce((sum, { misalignment }) => sum + of(misalignment) ** 2, 0)
