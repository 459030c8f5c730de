import { solveTransposed } from '../cholesky'
import type { Misalignment } from '../readings/equation'
import type { Train } from '../train'
import { covarianceOf, dot, observed, type ChainErrors } from './observed'
import { rowGains, type SurveyRow } from './rows'

/** What surveys do to the lines of the couplings. */
export interface Joined {
  readonly rows: readonly SurveyRow[]
  /** Of each coupling: change of `[y, sy, z, sz]`. */
  readonly changes: readonly (readonly number[])[]
  /** Of each coupling: what each of the four gains from each row. */
  readonly gains: readonly (readonly (readonly number[])[])[]
  /** What the surveys make of a change of one coupling's line, at every coupling: K H e. */
  readonly taken: (from: number, change: readonly number[]) => number[][]
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
  const { rows, rest, reduced, lower } = observed(train, surveys, lines, errors)
  const seen = (c: number, change: readonly number[]) =>
    rows.map((row) => dot(rowGains(train, row, c), change))
  // S H' in the units of `rest`, a list for each of the four numbers of each coupling
  const shared = errors.map((columns, c) => {
    const ofOne = units.map((unit) => reduced(seen(c, unit)))
    return covarianceOf(columns).map((part) =>
      rest.map((_, i) => ofOne.reduce((sum, by, k) => sum + (part[k] ?? 0) * (by[i] ?? 0), 0)),
    )
  })
  // what the surveys' own lines take is out of each part already
  const gains = shared.map((four) => four.map((part) => solveTransposed(lower, part)))
  // K H: of each coupling the four numbers, by the four numbers of each coupling
  const answers = errors.map((_, from) => {
    const ofOne = units.map((unit) => seen(from, unit))
    return gains.map((four) => four.map((gain) => ofOne.map((by) => dot(gain, by))))
  })
  return {
    rows,
    changes: shared.map((four) => four.map((part) => dot(part, rest))),
    gains,
    taken: (from, change) =>
      (answers[from] ?? []).map((four) => four.map((part) => dot(part, change))),
  }
}

const units = [
  [1, 0, 0, 0],
  [0, 1, 0, 0],
  [0, 0, 1, 0],
  [0, 0, 0, 1],
]
