import type { Coupling } from '../train'
import { readingSystem } from './system'

/**
 * How the line of a coupling follows from what was read: `[y, sy, z, sz]` (um, mrad) is these gains times the values of
 * all sets that are used, in order (of a line set: of what it gives, offsets y and z, slopes y and z). The sweeps' own
 * zeros are out of it: their columns are centred, so an error that all readings of a sweep share changes nothing.
 * @returns four rows, an entry a value
 * @throws RangeError when the readings leave an unknown open; `undetermined` says so beforehand
 */
export function lineGains(coupling: Coupling): number[][] {
  const { equations, scale, svd, open } = readingSystem(coupling)
  if (open.length > 0) throw new RangeError(`readings of ${coupling.id} leave its line open`)
  return scale.map((sc, j) =>
    equations.map(({ weight }, i) =>
      svd.values.reduce(
        (sum, s, k) =>
          sum + ((svd.right[k]?.[j] ?? 0) * (svd.left[k]?.[i] ?? 0) * weight) / (s * s * sc),
        0,
      ),
    ),
  )
}
