import type { DraftReading } from './hours'
import type { DraftSet } from './readingPresets'

const placeFields = ['kind', 'rides', 'end', 'at', 'diameter', 'face'] as const

const hoursOf = (set: DraftSet): Set<number | undefined> =>
  new Set(Array.isArray(set['readings']) ? (set['readings'] as DraftReading[]).map(([h]) => h) : [])

/** Whether two sets are the same dial at the same place, read at the same hours: one of them repeats the other. */
function repeats(a: DraftSet, b: DraftSet): boolean {
  const same = placeFields.every(
    (field) => (a[field] ?? usual[field]) === (b[field] ?? usual[field]),
  )
  if (!same) return false
  if (a['kind'] === 'line') return true
  const hours = hoursOf(b)
  return [...hoursOf(a)].filter((hour) => hours.has(hour)).length >= 2
}
const usual: Readonly<Record<string, unknown>> = { face: 'front' }

/** Sets that read the same as the one at `index`, used or not. */
export const repeatsOf = (sets: readonly DraftSet[], index: number): number[] => {
  const set = sets[index]
  return set ? sets.flatMap((other, i) => (i !== index && repeats(set, other) ? [i] : [])) : []
}

/** The same dial at the same place once more, nothing read yet; who, when and why are asked anew. */
export function readAgain(set: DraftSet): DraftSet {
  const kept = Object.fromEntries(
    Object.entries(set).filter(([key]) => !['use', 'why', 'when', 'by'].includes(key)),
  )
  if (set['kind'] === 'line')
    return Object.fromEntries(
      Object.entries(kept).filter(([key]) => key !== 'offset' && key !== 'slope'),
    )
  const readings = Array.isArray(set['readings']) ? (set['readings'] as DraftReading[]) : []
  return { ...kept, readings: readings.map(([hour]) => [hour, undefined]) }
}

/** The sets with one that repeats others used alone; the others stay, left out of the line. */
export const usedAlone = (sets: readonly DraftSet[], index: number): DraftSet[] => {
  const others = new Set(repeatsOf(sets, index))
  return sets.map((set, i) => {
    if (i === index) return Object.fromEntries(Object.entries(set).filter(([key]) => key !== 'use'))
    return others.has(i) ? { ...set, use: false } : set
  })
}
