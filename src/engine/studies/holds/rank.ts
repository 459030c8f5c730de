import { tol } from '../../../mechanics/tolerances'
import type { Train } from '../../../mechanics/train'
import { inDocumentOrder } from './choice'
import type { HoldRow } from './row'

/** Whether two numbers of one unit differ by no more than the last digits of the solver. */
export const equal = (a: number, b: number): boolean =>
  a === b || Math.abs(a - b) <= tol.sameCost * Math.max(Math.abs(a), Math.abs(b)) + tol.dust

/** Whether a choice has a plan whose chance is smaller than the one asked for. */
export const fallsShort = ({ wanted }: HoldRow): boolean => wanted?.reached === false

/**
 * The best choice first: those that reach the chance asked for, where there is one, before those that do not, and
 * those by their chance; then by cost plus effort; where that is equal, fewer disturbed, lower floor, more
 * held, document order. Choices without a plan stand last, those without an answer behind them.
 */
export function rankHolds(train: Train, rows: readonly HoldRow[]): HoldRow[] {
  const place = new Map(train.bodies.map(({ id }, b) => [id, b]))
  const indices = ({ held }: HoldRow) => held.map((id) => place.get(id) ?? 0)
  return ranked(
    rows,
    [
      (row) => (row.cost === undefined ? 2 : fallsShort(row) ? 1 : 0),
      (row) => (fallsShort(row) ? -(row.wanted?.all ?? 0) : 0),
      (row) => row.costWithEffort ?? (row.status === 'impossible' ? 1e300 : Infinity),
      (row) => row.disturbed.length,
      (row) => row.floor ?? Infinity,
      (row) => -row.held.length,
    ],
    (a, b) => inDocumentOrder(indices(a), indices(b)),
  )
}

/**
 * Sorts by one key after the other. Rows whose key is equal but for the last digits count as equal,
 * so that noise never decides; a run of equal rows begins at its smallest, which keeps the order whole.
 */
function ranked<Row>(
  rows: readonly Row[],
  keys: readonly ((row: Row) => number)[],
  last: (a: Row, b: Row) => number,
): Row[] {
  const [key, ...more] = keys
  if (!key) return [...rows].sort(last)
  const sorted = [...rows].sort((a, b) => (key(a) < key(b) ? -1 : key(a) > key(b) ? 1 : 0))
  const out: Row[] = []
  let run: Row[] = []
  for (const row of sorted) {
    const [first] = run
    if (first !== undefined && !equal(key(first), key(row))) {
      out.push(...ranked(run, more, last))
      run = []
    }
    run.push(row)
  }
  return [...out, ...ranked(run, more, last)]
}
