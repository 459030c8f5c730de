import { valueOf } from './affine'
import { farthest } from './farthest'
import type { Check } from './tolerance'

/** The share of its limit that a check uses where the columns have these values. */
export function shareOf(check: Check, columns: ArrayLike<number>): number {
  const y = Math.abs(valueOf(check.y, columns))
  const z = check.z ? Math.abs(valueOf(check.z, columns)) : 0
  return check.round ? Math.hypot(y, z) : Math.max(y, z)
}

/** The share that a check uses with what is to be kept free of it. */
export function keptShareOf(check: Check, columns: ArrayLike<number>): number {
  const { reserve } = check
  if (!reserve) return shareOf(check, columns)
  const y = valueOf(check.y, columns)
  const z = check.z ? valueOf(check.z, columns) : 0
  if (check.round) return farthest(y, z, reserve).by
  return Math.max(Math.abs(y) + reserve(1, 0), check.z ? Math.abs(z) + reserve(0, 1) : 0)
}
