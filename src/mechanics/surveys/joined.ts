import type { Misalignment } from '../readings/equation'
import type { Train } from '../train'
import { dot, observed, type ChainErrors } from './observed'
import { rowGains, type SurveyRow } from './rows'

/** What surveys do to the lines of the couplings. */
export interface Joined {
  readonly rows: readonly SurveyRow[]
  /** Of each coupling: change of `[y, sy, z, sz]`. */
  readonly changes: readonly (readonly number[])[]
  /** Of each coupling: what each of the four gains from each row. */
  readonly gains: readonly (readonly (readonly number[])[])[]
  /** What a change of a coupling's line adds to each row. */
  readonly seen: (c: number, change: readonly number[]) => number[]
}

/**
 * Least squares of all couplings and surveys together, in the form that takes the lines as the readings gave them and adds
 * K (survey - H d) with K = S H' P, P the inverse of the covariance of the rows with the surveys' own lines taken out
 * (Kalman's gain, textbook). It is the same as one fit of everything, and needs no inverse of S, which may have none.
 */
export function joined(
  train: Train,
  surveys: readonly number[],
  lines: readonly Misalignment[],
  errors: ChainErrors,
): Joined {
  const { rows, rest, reduced } = observed(train, surveys, lines, errors)
  // columns of the matrix that takes rows into the units of `rest`
  const inward = rows.map((_, j) => reduced(rows.map((__, i) => (i === j ? 1 : 0))))
  const seen = (c: number, change: readonly number[]) =>
    rows.map((row) => dot(rowGains(train, row, c), change))
  const shared = errors.map((columns, c) => {
    // S H' in those units, a list for each of the four numbers
    const parts = columns.map((column) => ({ column, by: reduced(seen(c, column)) }))
    return [0, 1, 2, 3].map((k) =>
      rest.map((_, i) =>
        parts.reduce((sum, { column, by }) => sum + (column[k] ?? 0) * (by[i] ?? 0), 0),
      ),
    )
  })
  return {
    rows,
    changes: shared.map((four) => four.map((part) => dot(part, rest))),
    gains: shared.map((four) => four.map((part) => inward.map((column) => dot(part, column)))),
    seen,
  }
}
