import { choleskyOf, solveLower } from '../cholesky'
import type { Misalignment } from '../readings/equation'
import { tol } from '../tolerances'
import type { Train } from '../train'
import { datumColumns, rowGains, surveyRows, type SurveyRow } from './rows'

/** What one standard deviation of each independent error does to the line of each coupling: lists of `[y, sy, z, sz]`. */
export type ChainErrors = readonly (readonly (readonly number[])[])[]

/** Surveys beside the lines of the couplings, in units in which all errors are independent and alike. */
export interface Observed {
  readonly rows: readonly SurveyRow[]
  /** Survey less what the lines say, without the surveys' own lines. */
  readonly rest: readonly number[]
  /** A vector of the rows in those units, without what the surveys' own lines take of it. */
  readonly reduced: (values: readonly number[]) => number[]
  /** Lower triangle: from those units back to um. */
  readonly lower: readonly (readonly number[])[]
  /** How many numbers stand against the lines of the couplings. */
  readonly freedom: number
}

/**
 * Puts surveys beside the lines: survey - H d has the covariance H S H' + u^2 (S of the lines, u of the survey; JCGM 100,
 * 5.1.2), of which Cholesky's triangle makes independent parts; the unknown line of each survey and direction is taken
 * out by projection (least squares, textbook). A singular S is no matter here.
 */
export function observed(
  train: Train,
  surveys: readonly number[],
  lines: readonly Misalignment[],
  errors: ChainErrors,
): Observed {
  const rows = surveys.flatMap((survey) => surveyRows(train, survey))
  const seen = rows.map((row) =>
    errors.flatMap((columns, c) => {
      const gains = rowGains(train, row, c)
      return columns.map((column) => dot(gains, column))
    }),
  )
  const lower = choleskyOf(
    seen.map((a, i) => seen.map((b, j) => dot(a, b) + (i === j ? (rows[i]?.u ?? 0) ** 2 : 0))),
  )
  const own = orthonormal(datumColumns(rows).map((column) => solveLower(lower, column)))
  const reduced = (values: readonly number[]): number[] =>
    own.reduce(
      (rest, unit) => {
        const part = dot(unit, rest)
        return rest.map((value, i) => value - part * (unit[i] ?? 0))
      },
      solveLower(lower, values),
    )
  const apart = rows.map((row) =>
    lines.reduce((left, { y, sy, z, sz }, c) => {
      return left - dot(rowGains(train, row, c), [y, sy, z, sz])
    }, row.value),
  )
  return { rows, rest: reduced(apart), reduced, lower, freedom: rows.length - own.length }
}

/** Columns at right angles and of length 1 (Gram and Schmidt, twice over); those that depend on others are left out. */
function orthonormal(columns: readonly (readonly number[])[]): number[][] {
  const out: number[][] = []
  for (const column of columns) {
    const full = Math.hypot(...column)
    let rest = [...column]
    for (const unit of [...out, ...out]) {
      const part = dot(unit, rest)
      rest = rest.map((value, i) => value - part * (unit[i] ?? 0))
    }
    const length = Math.hypot(...rest)
    if (length > tol.singular * full) out.push(rest.map((value) => value / length))
  }
  return out
}

export const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0)
