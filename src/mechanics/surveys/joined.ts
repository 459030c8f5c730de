import { solveTransposed } from '../cholesky'
import type { Misalignment } from '../readings/equation'
import type { Train } from '../train'
import { covarianceOf, fromTheFirst, type ChainErrors } from './chainAxes'
import { dot, observed } from './observed'
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
  const answers = gains.map((four) => four.map((gain) => takenBy(train, rows, gain)))
  return {
    rows,
    changes: shared.map((four) => four.map((part) => dot(part, rest))),
    gains,
    taken: (from, change) =>
      answers.map((four) => four.map((part) => dot(part[from] ?? [], change))),
  }
}

/**
 * What a list of gains, one for each row, makes of the four numbers of each coupling: sums over the rows beyond it, gathered
 * from the far end on, so that each row is looked at once.
 */
function takenBy(
  { couplings }: Train,
  rows: readonly SurveyRow[],
  gain: readonly number[],
): number[][] {
  const out: number[][] = couplings.map(() => [])
  const order = rows
    .map((_, i) => i)
    .sort((a, b) => (rows[b]?.machine ?? 0) - (rows[a]?.machine ?? 0))
  let [y, sy, z, sz, at, next] = [0, 0, 0, 0, couplings[0]?.mid ?? 0, 0]
  for (const c of fromTheFirst(couplings).reverse()) {
    const { right, mid } = couplings[c] ?? { right: 0, mid: at }
    sy += y * (at - mid)
    sz += z * (at - mid)
    at = mid
    for (; next < order.length; next++) {
      const i = order[next] ?? 0
      const row = rows[i]
      if (!row || row.machine < right) break
      const by = gain[i] ?? 0
      if (row.way === 'y') {
        y += by
        sy += by * (row.x - mid)
      } else {
        z += by
        sz += by * (row.x - mid)
      }
    }
    out[c] = [y, sy, z, sz]
  }
  return out
}

const units = [
  [1, 0, 0, 0],
  [0, 1, 0, 0],
  [0, 0, 1, 0],
  [0, 0, 0, 1],
]
