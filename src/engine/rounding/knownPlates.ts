import { tol } from '../../mechanics/tolerances'
import { platesAddUp } from '../../mechanics/packRange'
import type { Foot } from '../../mechanics/train'
import { nanometres, type Nanometres } from './plates'

/**
 * The plates under a foot, thickest first; undefined where they were not entered or do not add up to the
 * pack, so that what lies there is not known.
 */
export function knownPlates({ pack }: Foot): Nanometres[] | undefined {
  if (!pack?.plates || !platesAddUp(pack)) return undefined
  return pack.plates.map(nanometres).sort((a, b) => b - a)
}

/** Every sum of some of the plates (none too), each with the fewest that make it, thickest first. */
export function subsets(plates: readonly Nanometres[]): Map<Nanometres, readonly Nanometres[]> {
  const sums = new Map<Nanometres, readonly Nanometres[]>([[0, []]])
  for (const plate of plates)
    for (const [sum, few] of [...sums]) {
      const next = sum + plate
      const was = sums.get(next)
      if (was ? few.length + 1 < was.length : sums.size < tol.mostSubsets)
        sums.set(next, [...few, plate])
    }
  return sums
}
