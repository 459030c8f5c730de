import { choleskyOf, solveLower } from '../cholesky'
import type { Misalignment } from '../readings/equation'
import { tol } from '../tolerances'
import type { Train } from '../train'
import { chainAxes, saidOf, sharedBy, type ChainErrors } from './chainAxes'
import { axisColumns, datumColumns, surveyRows, type SurveyRow } from './rows'

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
  const axes = chainAxes(train, lines, errors)
  const lower = choleskyOf(
    rows.map((row, i) =>
      rows.map((other, j) => (j > i ? 0 : sharedBy(axes, row, other) + (i === j ? row.u ** 2 : 0))),
    ),
  )
  const { reduced, taken } = whitened(lower, datumColumns(rows))
  const apart = rows.map((row) => row.value - saidOf(axes, row))
  return { rows, rest: reduced(apart), reduced, lower, freedom: rows.length - taken }
}

/**
 * Surveys beside one another, as if nothing were read at the couplings: the axis of every machine is one straight line in
 * all of them (least squares, textbook).
 * @returns sum of squares of what is left over in the uncertainty of the surveys, and how many numbers stand against others
 */
export function amongSurveys(
  train: Train,
  surveys: readonly number[],
): { squares: number; freedom: number } {
  const rows = surveys.flatMap((survey) => surveyRows(train, survey))
  const weighed = (column: readonly number[]) => column.map((v, i) => v / (rows[i]?.u ?? 1))
  const own = orthonormal([...datumColumns(rows), ...axisColumns(rows)].map(weighed))
  const rest = without(own, weighed(rows.map(({ value }) => value)))
  return { squares: dot(rest, rest), freedom: rows.length - own.length }
}

/** Takes vectors into units of independent parts, and takes out of them what columns of unknowns explain. */
function whitened(
  lower: readonly (readonly number[])[],
  columns: readonly (readonly number[])[],
): Pick<Observed, 'reduced'> & { taken: number } {
  const own = orthonormal(columns.map((column) => solveLower(lower, column)))
  return { taken: own.length, reduced: (values) => without(own, solveLower(lower, values)) }
}

const without = (own: readonly (readonly number[])[], values: readonly number[]): number[] =>
  own.reduce<number[]>(
    (rest, unit) => {
      const part = dot(unit, rest)
      return rest.map((value, i) => value - part * (unit[i] ?? 0))
    },
    [...values],
  )

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

export function dot(a: readonly number[], b: readonly number[]): number {
  let sum = 0
  for (let i = 0; i < a.length; i++) sum += (a[i] ?? 0) * (b[i] ?? 0)
  return sum
}
