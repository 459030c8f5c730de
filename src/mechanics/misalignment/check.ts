import type { Millimetres } from '../units'
import type { Coupling } from '../train'
import type { Misalignment } from '../readings/equation'

type CheckKind = 'left plane' | 'right plane' | 'offset' | 'angle'

/**
 * One limit of a coupling as a functional of its misalignment, the same sideways and up and down:
 * value = offset * d(mid) + slope * s, in mrad for planes and angle, in um for the offset.
 */
export interface Check {
  readonly what: CheckKind
  readonly offset: number
  readonly slope: number
  /** In mrad, or um for the offset. */
  readonly limit: number
  /** Multiplies the check so that value and limit are displacements (um) of a like size. */
  readonly lever: Millimetres
}

/** An angle is weighed by what it does at one metre, a size like that of the other rows. */
const angleLever: Millimetres = 1000

/**
 * The limits a coupling's tolerance sets. For planes p < q the angle at the left plane is d(q)/(q-p)
 * and at the right one -d(p)/(q-p).
 * @returns limits in mrad for planes and angles, in um for offsets
 */
export function checksOf(coupling: Coupling): Check[] {
  const { flex, offset, angle } = coupling.tolerance
  const span = coupling.q - coupling.p
  return [
    ...(flex === undefined
      ? []
      : [
          { what: 'left plane' as const, offset: 1 / span, slope: 0.5, limit: flex, lever: span },
          { what: 'right plane' as const, offset: -1 / span, slope: 0.5, limit: flex, lever: span },
        ]),
    ...(offset === undefined
      ? []
      : [{ what: 'offset' as const, offset: 1, slope: 0, limit: offset, lever: 1 }]),
    ...(angle === undefined
      ? []
      : [{ what: 'angle' as const, offset: 0, slope: 1, limit: angle, lever: angleLever }]),
  ]
}

/** A check's two components for a misalignment (um, mrad): mrad for a plane or an angle, um for an offset. */
export const checkValue = (check: Check, d: Misalignment): { y: number; z: number } => ({
  y: check.offset * d.y + check.slope * d.sy,
  z: check.offset * d.z + check.slope * d.sz,
})

/**
 * Share of a limit: the true vector for "round", the larger component for "box".
 * @param value in the unit of the limit, um or mrad
 * @returns a part of the limit: 1 is all of it
 */
export const shareOf = (
  value: { y: number; z: number },
  limit: number,
  shape: 'box' | 'round',
): number =>
  (shape === 'round'
    ? Math.hypot(value.y, value.z)
    : Math.max(Math.abs(value.y), Math.abs(value.z))) / limit
