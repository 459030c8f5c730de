import type { Micrometres } from '../../../mechanics/units'
import type { Train } from '../../../mechanics/train'
import { equal, fallsShort } from './rank'
import type { HoldRow } from './row'

/** How a choice stands to the others of its list; the ids of the held bodies name a choice. */
export interface HoldComparison {
  /** The better ranked choice that has the very same plan. */
  readonly sameAs?: readonly string[]
  /** A choice that is nowhere worse in moves, effort, floor and machines disturbed, and better in one. */
  readonly beatenBy?: readonly string[]
  /** An impossible choice that holds less: what holds more cannot be possible. */
  readonly impliedBy?: readonly string[]
}

/** Compares ranked rows with each other. */
export function holdComparisons(train: Train, ranked: readonly HoldRow[]): HoldComparison[] {
  const least = leastImpossible(ranked)
  const own = new Map<HoldRow, readonly number[]>()
  const alike = new Map<string, { row: HoldRow; of: HoldRow }[]>()
  const first = ranked.map((row): HoldComparison => {
    if (row.status === 'impossible') {
      const less = least.find((other) => holdsLess(other, row))
      return less ? { impliedBy: less.held } : {}
    }
    if (row.cost === undefined) return {}
    const key = row.disturbed.join(' ')
    const others = alike.get(key) ?? []
    const same = others.find((other) => samePlan(other.row, row))?.of
    alike.set(key, [...others, { row, of: same ?? row }])
    if (same) return { sameAs: same.held }
    own.set(row, countsOf(train, row))
    return {}
  })
  return ranked.map((row, i) => {
    const counts = own.get(row)
    const better = counts && [...own].find(([, others]) => beats(others, counts))
    return better ? { beatenBy: better[0].held } : (first[i] ?? {})
  })
}

/** Effort of the bodies that a row disturbs. */
export const effortOf = (train: Train, row: HoldRow): Micrometres =>
  train.bodies.reduce((sum, { id, effort }) => sum + (row.disturbed.includes(id) ? effort : 0), 0)

/** Impossible choices that hold no other one. */
function leastImpossible(rows: readonly HoldRow[]): HoldRow[] {
  const least: HoldRow[] = []
  for (const row of [...rows].sort((a, b) => a.held.length - b.held.length))
    if (row.status === 'impossible' && !least.some((other) => holdsLess(other, row)))
      least.push(row)
  return least
}

const holdsLess = (less: HoldRow, more: HoldRow): boolean =>
  less.held.length < more.held.length && less.held.every((id) => more.held.includes(id))

/**
 * Of rows that disturb the same bodies: moved by the same amounts, as far as the counts of a row tell;
 * or, where one choice holds all that the other does and both come to the same, its plan is as good a
 * plan of the other.
 */
function samePlan(a: HoldRow, b: HoldRow): boolean {
  const nested = holdsLess(a, b) || holdsLess(b, a)
  const numbers = ({ cost, worstShare, total }: HoldRow) =>
    [cost, worstShare, ...(nested ? [] : [total?.shim, total?.side, total?.axial])].map(
      (value) => value ?? NaN,
    )
  const other = numbers(b)
  return numbers(a).every((value, i) => equal(value, other[i] ?? NaN))
}

/** What a choice takes, count by count; smaller is better in each. */
const countsOf = (train: Train, row: HoldRow): readonly number[] => [
  row.cost ?? Infinity,
  effortOf(train, row),
  row.floor ?? Infinity,
  row.disturbed.length,
  fallsShort(row) ? 1 - (row.wanted?.all ?? 0) : 0,
]

const beats = (a: readonly number[], b: readonly number[]): boolean => {
  const same = a.map((value, i) => equal(value, b[i] ?? NaN))
  const nowhereWorse = a.every((value, i) => same[i] || value < (b[i] ?? NaN))
  return nowhereWorse && same.includes(false)
}
