import { valueOf } from './affine'
import type { Check } from './tolerance'

/** The share of its limit that a check uses where the columns have these values. */
export function shareOf(check: Check, columns: ArrayLike<number>): number {
  const y = Math.abs(valueOf(check.y, columns))
  const z = check.z ? Math.abs(valueOf(check.z, columns)) : 0
  return check.round ? Math.hypot(y, z) : Math.max(y, z)
}
