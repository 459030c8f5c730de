import { tol } from '../tolerances'
import type { Body, Train } from '../train'
import { lineThrough, lineValueAt } from '../growth'
import { noMotion, type Motion } from '../motion'
import type { Misalignment } from '../readings/equation'
import { couplingMotions } from '../misalignment/couplingMotion'
import type { CouplingMotion } from '../misalignment/shares'
import { workDoubtOf } from './usual'

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

/** One error of the work on a body: which one, and how the body then stands off. */
export interface WorkError {
  readonly key: string
  readonly motion: Motion
}

/**
 * What one standard deviation of each error does to a body. A row rises by the mean of its feet's errors, of which a
 * foot that is not shimmed has none; it slides by its own, unless it is keyed. The body follows the straight line through
 * its rows, and does not roll: unequal shims of one row are outside the model.
 */
export function bodyErrors(train: Train, body: Body, { shims, slides }: Worked): WorkError[] {
  const doubt = workDoubtOf(train.plan.sure)
  return body.rows.flatMap(({ feet }, r): WorkError[] => {
    const here = feet.flatMap((f) => body.feet[f] ?? [])
    const shimmed = here.filter(({ mayShim }) => mayShim).length
    const keyed = here.some(({ maySlide }) => !maySlide)
    const rise = rowError(body, r, (doubt.shim * Math.sqrt(shimmed)) / here.length)
    const slide = rowError(body, r, doubt.slide)
    return [
      ...(shims && body.may.rise && shimmed > 0
        ? [
            {
              key: `shims of ${body.id}, row ${r}`,
              motion: { ...noMotion, tz: rise.at, sz: rise.slope },
            },
          ]
        : []),
      ...(slides && body.may.slide && !keyed
        ? [
            {
              key: `slide of ${body.id}, row ${r}`,
              motion: { ...noMotion, ty: slide.at, sy: slide.slope },
            },
          ]
        : []),
    ]
  })
}

/**
 * What a row of feet that stands elsewhere along the train than entered does to a body that is pitched and yawed by a
 * plan: shims and slides are made for the place entered.
 */
export function placeErrors(train: Train, body: Body, { sy, sz }: Motion): WorkError[] {
  if (sy === 0 && sz === 0) return []
  const { foot } = workDoubtOf(train.plan.sure)
  return body.rows.map((_, r) => {
    const { at, slope } = rowError(body, r, foot)
    return {
      key: `place of ${body.id}, row ${r}`,
      motion: { ...noMotion, ty: sy * at, sy: sy * slope, tz: sz * at, sz: sz * slope },
    }
  })
}

/** The least-squares line over the rows where one of them is off by an amount: at the reference, and its slope. */
function rowError(body: Body, row: number, error: number): { at: number; slope: number } {
  const line = lineThrough(body.rows.map(({ x }, r) => ({ x, value: r === row ? error : 0 })))
  return { at: lineValueAt(line, body.x0), slope: line.slope }
}

/**
 * What one standard deviation at each row by itself does to all bodies.
 * @returns a motion of every body for each of these errors, which are independent of each other
 */
export function workMotions(train: Train, worked: (body: number) => Worked): Motion[][] {
  return train.bodies.flatMap((body, b) =>
    bodyErrors(train, body, worked(b)).map(({ motion }) =>
      train.bodies.map((_, i) => (i === b ? motion : noMotion)),
    ),
  )
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
