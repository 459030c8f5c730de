import type { Micrometres } from '../units'
import type { ReadingSet } from '../train'

/**
 * Closure of a sweep with all four hours: top + bottom - (left + right); 0 when the dial ran true.
 * Undefined where one of 12, 3, 6, 9 was not read. Sag adds equally to both sums and falls out.
 */
export function closure(set: ReadingSet): Micrometres | undefined {
  if (set.kind === 'line') return undefined
  const at = (hour: number) => set.readings.find((reading) => reading.hour === hour)?.value
  const [top, right, bottom, left] = [at(12), at(3), at(6), at(9)]
  if (top === undefined || right === undefined || bottom === undefined || left === undefined)
    return undefined
  return top + bottom - (left + right)
}
