import { tol } from '../mechanics/tolerances'
import type { LpRow } from '../engine/lp/solver'

/** What is to be known of a row before it is handed to the solver. */
export interface RowFacts {
  /** Its coefficients are numbers, one a column, and some number keeps its bounds. */
  readonly sound: boolean
  /** Its numbers lie far from those of usual trains. */
  readonly farOff: boolean
  /** Its last column. */
  readonly last: number
}

const known = new WeakMap<LpRow, RowFacts>()

/** Looked into once: rows are asked in round after round. */
export function rowFactsOf(row: LpRow): RowFacts {
  const before = known.get(row)
  if (before) return before
  const { terms, lower, upper } = row
  const finite = terms.every((term) => Number.isFinite(term[1]))
  const single = new Set(terms.map(([column]) => column)).size === terms.length
  const facts = {
    sound: finite && single && !isCrossed(row),
    farOff:
      terms.some((term) => Math.abs(term[1]) > tol.farCoefficient) || isFar(lower) || isFar(upper),
    last: terms.reduce((last, [column]) => Math.max(last, column), -1),
  }
  known.set(row, facts)
  return facts
}

/** True of bounds that are no numbers, or that no number keeps. */
export const isCrossed = ({ lower, upper }: { lower: number; upper: number }): boolean =>
  Number.isNaN(lower) ||
  Number.isNaN(upper) ||
  lower > upper ||
  lower === Infinity ||
  upper === -Infinity

const isFar = (bound: number): boolean => Number.isFinite(bound) && Math.abs(bound) > tol.farBound
