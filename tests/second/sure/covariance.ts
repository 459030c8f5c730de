import { isHeld } from '../motion'
import type { Train } from '../train'
import { standings, still } from './bodies'
import { checksOf, seen, type Check } from './checks'
import { errorsOf, type Motions } from './errors'
import { growthErrors } from './growthErrors'
import { jointsOf, parts, type Joint } from './joints'
import { readingErrors } from './readingErrors'
import type { Source } from './source'
import { spreadOf, type Spread } from './spreads'
import { workErrors } from './workErrors'

/** Variances of what a check sees in y and z, and what goes together. */
export interface Covariance {
  yy: number
  yz: number
  zz: number
}

/** One check with what its errors are worth. */
export interface Judged {
  joint: Joint
  check: Check
  covariance: Covariance
}

/** Every check with its covariance: the sum over independent errors, JCGM 102, 6.2.1. */
function judged(joints: readonly Joint[], sources: readonly Source[]): Judged[] {
  const alone = sources.map(({ effects }) => {
    const numbers = new Map<number, number>()
    for (const { to, by } of effects) numbers.set(to, (numbers.get(to) ?? 0) + by)
    return numbers
  })
  return joints.flatMap((joint) =>
    checksOf(joint).map((check): Judged => {
      const covariance = { yy: 0, yz: 0, zz: 0 }
      for (const numbers of alone) {
        const five = Float64Array.from(parts, (_, k) => numbers.get(joint.first + k) ?? 0)
        const [y, z] = seen(check, five, 0)
        covariance.yy += y * y
        covariance.yz += y * z
        covariance.zz += z * z
      }
      return { joint, check, covariance }
    }),
  )
}

/**
 * Every check of a train (in mm and um) whatever the plan: every free body counts as moved, and places
 * of feet are left out. Intervals that a plan holds for to both ends are no uncertainty beside that.
 */
export function ofAnyPlan(train: Train): Judged[] {
  const intervals = train.plan?.worst === true ? 'held to' : 'uncertain'
  const joints = jointsOf(train)
  const work = standings(train)
    .filter(({ body }) => !isHeld(body))
    .flatMap((standing) => workErrors(train, joints, standing, still, []))
    .filter(({ group }) => group !== 'places')
  return judged(joints, [
    ...readingErrors(train, joints),
    ...growthErrors(train, joints, intervals),
    ...work,
  ])
}

/** What a plan carried out blind is worth at every check, worked out instead of sampled. */
export function workedOut(
  document: Train,
  motions: Motions,
): { coupling: string; state: string; u: Spread }[] {
  const { joints, known, work } = errorsOf(document, motions)
  return judged(joints, [...known, ...work]).map(({ joint, check, covariance }) => ({
    coupling: joint.c.id,
    state: joint.state.id,
    u: spreadOf(check, covariance.yy, covariance.zz, document),
  }))
}

/** Standard uncertainty of what a check sees in the direction (cos, sin). */
export const spreadIn = ({ yy, yz, zz }: Covariance, cos: number, sin: number): number =>
  Math.sqrt(Math.max(0, yy * cos * cos + 2 * yz * cos * sin + zz * sin * sin))
