import { checksOf, checkValue, type Check } from '../misalignment/check'
import type { CouplingMotion } from '../misalignment/shares'
import type { Train } from '../train'
import type { Micrometres } from '../units'
import type { ErrorSource } from './errorSource'
import { intervalEffects } from './intervals'
import {
  checkCovariance,
  errorsAt,
  gapDoubt,
  guardedErrors,
  uToward,
  type CheckCovariance,
} from './judged'

/**
 * Room that is kept between a check and its limit, in every direction n of its plane, in the unit of the check:
 * k sqrt(n' S n) of an ellipse, and |n.c| of each segment; growth moves a check along y or along z alone.
 */
export interface KeptRoom {
  /** k^2 S. */
  readonly ellipse: CheckCovariance
  /** Half widths of all segments along y, and along z. */
  readonly y: number
  readonly z: number
}

/** What is kept at one coupling in one state. */
export interface KeptAt {
  /** In the order of `checksOf`. */
  readonly checks: readonly KeptRoom[]
  readonly gap: Micrometres
}

/** By coupling and state. */
export type KeptRooms = readonly (readonly KeptAt[])[]

/** Whether a plan keeps anything free of the limits at all. */
export const keepsRoom = ({ plan }: Pick<Train, 'plan'>): boolean => plan.guard > 0 || plan.worst

/** Room kept in a direction, from y toward z (rad): the support function of the ellipse and the segments. */
export function roomToward({ ellipse, y, z }: KeptRoom, angle: number): number {
  const segments = y * Math.abs(Math.cos(angle)) + z * Math.abs(Math.sin(angle))
  return uToward(ellipse, angle) + segments
}

/** Room kept along y and along z. */
export const roomAlong = ({ ellipse, y, z }: KeptRoom): { y: number; z: number } => ({
  y: Math.sqrt(ellipse.yy) + y,
  z: Math.sqrt(ellipse.zz) + z,
})

/**
 * What `plan.guard` and `plan.worst` keep free of every limit (guard band: JCGM 106:2012, 8.3; ISO 14253-1). It depends
 * on no plan: every body that is not held counts as moved, and places of feet are left out.
 * @returns undefined where nothing is kept
 */
export function keptRooms(train: Train): KeptRooms | undefined {
  if (!keepsRoom(train)) return undefined
  const before = known.get(train)
  if (before) return before
  const rooms = keptFrom(train, train.plan.guard > 0 ? guardedErrors(train) : [])
  known.set(train, rooms)
  return rooms
}

/** Trains never change; one that is dragged by hand asks at every frame. */
const known = new WeakMap<Train, KeptRooms>()

/**
 * The same from errors that are known already.
 * @param errors that the guard is kept against
 */
export function keptFrom(train: Train, errors: readonly ErrorSource[]): KeptRooms {
  const { guard, worst } = train.plan
  const intervals = worst ? intervalEffects(train) : []
  return train.couplings.map((coupling, c) =>
    train.states.map((_, s): KeptAt => {
      const own = errorsAt(errors, c, s)
      const segments = intervals.flatMap((one) =>
        one.coupling === c && one.state === s ? [one.by] : [],
      )
      return {
        checks: checksOf(coupling).map((check) => keptOf(check, guard, own, segments)),
        gap: guard * gapDoubt(own) + segments.reduce((sum, { gap }) => sum + Math.abs(gap), 0),
      }
    }),
  )
}

function keptOf(
  check: Check,
  guard: number,
  errors: readonly CouplingMotion[],
  segments: readonly CouplingMotion[],
): KeptRoom {
  const { yy, yz, zz } = checkCovariance(check, errors)
  const part = guard * guard
  const along = (way: 'y' | 'z') =>
    segments.reduce(
      (sum, { misalignment }) => sum + Math.abs(checkValue(check, misalignment)[way]),
      0,
    )
  return {
    ellipse: { yy: part * yy, yz: part * yz, zz: part * zz },
    y: along('y'),
    z: along('z'),
  }
}
