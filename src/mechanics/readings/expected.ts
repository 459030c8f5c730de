import type { Micrometres } from '../units'
import type { Coupling, Reading } from '../train'
import type { AsFound } from './asFound'
import { readingWithoutZero, type Misalignment } from './equation'

/** What a set should show, cold, once the plan is carried out. Engine units. */
export type ExpectedSet =
  | { readonly kind: 'sweep'; readonly readings: readonly Reading[] }
  | { readonly kind: 'line'; readonly offset: Sides; readonly slope: Sides }

interface Sides {
  readonly y: number
  readonly z: number
}

/**
 * The model's readings at the misalignment `d` after the moves, without today's residuals. The first
 * reading given as exactly 0 stays 0; a set without one keeps its fitted zero, and a gap set's zero
 * follows the shaft ends by `gap`.
 */
export function expectedSets(
  coupling: Coupling,
  found: AsFound,
  d: Misalignment,
  gap: Micrometres,
): ExpectedSet[] {
  return coupling.found.map((set, i) => {
    if (set.kind === 'line') {
      const arm = set.at - coupling.mid
      return {
        kind: 'line',
        offset: { y: d.y + d.sy * arm, z: d.z + d.sz * arm },
        slope: { y: d.sy, z: d.sz },
      }
    }
    const plain = set.readings.map(({ hour }) => readingWithoutZero(set, coupling, d, hour))
    const first = set.readings.findIndex(({ value }) => value === 0)
    const zero =
      first >= 0 ? -(plain[first] ?? 0) : (found.zeros[i] ?? 0) + (set.kind === 'gap' ? gap : 0)
    return {
      kind: 'sweep',
      readings: set.readings.map(({ hour }, k) => ({
        hour,
        value: k === first ? 0 : (plain[k] ?? 0) + zero,
      })),
    }
  })
}
