import type { CouplingMotion } from '../misalignment/shares'
import { checkValue, type Check } from '../misalignment/check'
import type { Train } from '../train'
import type { Micrometres } from '../units'
import type { ErrorSource } from './errorSource'
import { standingErrors, workSources } from './sources'

/** Covariance of the two components of a check: squares of mrad, or of um for the offset. */
export interface CheckCovariance {
  readonly yy: number
  readonly yz: number
  readonly zz: number
}

/** What one standard deviation of each error does to a coupling in a state. */
export const errorsAt = (
  sources: readonly ErrorSource[],
  coupling: number,
  state: number,
): CouplingMotion[] =>
  sources.flatMap(({ effects }) =>
    effects.flatMap((effect) =>
      effect.coupling === coupling && (effect.state ?? state) === state ? [effect.by] : [],
    ),
  )

/** Covariance of a check by independent errors (JCGM 100, 5.1.2). */
export function checkCovariance(check: Check, errors: readonly CouplingMotion[]): CheckCovariance {
  let [yy, yz, zz] = [0, 0, 0]
  for (const { misalignment } of errors) {
    const { y, z } = checkValue(check, misalignment)
    yy += y * y
    yz += y * z
    zz += z * z
  }
  return { yy, yz, zz }
}

/** Standard uncertainty of a check in a direction of its plane, from y toward z (rad). */
export function uToward({ yy, yz, zz }: CheckCovariance, angle: number): number {
  const [c, s] = [Math.cos(angle), Math.sin(angle)]
  return Math.sqrt(Math.max(0, c * c * yy + 2 * c * s * yz + s * s * zz))
}

/** Standard uncertainty of the gap between the shaft ends. */
export const gapDoubt = (errors: readonly CouplingMotion[]): Micrometres =>
  Math.hypot(...errors.map(({ gap }) => gap))

/**
 * The errors that a guard is kept against: what every plan has, with every free body counted as moved and places of
 * feet left out, so that they depend on no plan. With `plan.worst` a growth value given as an interval is kept whole,
 * and counts here no second time.
 */
export const guardedErrors = (train: Train): ErrorSource[] => [
  ...guardedStanding(train),
  ...guardedWork(train),
]

/** Those of them that depend on no choice of held bodies. */
export const guardedStanding = (train: Train): ErrorSource[] =>
  standingErrors(train, ({ by }) => !(train.plan.worst && by === 'interval'))

/** Those of the work on every body that is not held. */
export const guardedWork = (train: Train): ErrorSource[] =>
  workSources(train, (b) => train.bodies[b]?.held === false)
