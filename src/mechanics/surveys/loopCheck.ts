import { chiSquareQuantile } from '../chiSquare'
import type { Misalignment } from '../readings/equation'
import type { Train } from '../train'
import type { Micrometres } from '../units'
import type { ChainErrors } from './chainAxes'
import { dot, observed } from './observed'
import { entriesOf, explaining, sameTest, type OneEntry, type Tested } from './oneEntry'
import type { SurveyRow } from './rows'

/** One number of a survey beside what everything else says of it: the couplings and the other places together. */
export interface SurveyedRow extends SurveyRow {
  /** The number less that, and the standard uncertainty of the difference; missing where nothing else tells it. */
  readonly apart?: { readonly by: Micrometres; readonly u: Micrometres }
}

/** Whether a survey and the readings of the couplings tell of the same train. */
export interface LoopCheck {
  readonly rows: readonly SurveyedRow[]
  /** Sum of squares in standard uncertainties: chi-square with `freedom` where everything is sound. */
  readonly squares: number
  readonly freedom: number
  readonly limit: number
  /** Beyond it one entry alone says that something is wrong. */
  readonly entryLimit: number
  readonly agree: boolean
  /** Chance at most that a sound survey is said to disagree. */
  readonly risk: number
  /** The single entries that explain a disagreement, best first, as far as they cannot be told apart; none: no single one does. */
  readonly explains: readonly OneEntry[]
}

/**
 * Tests one survey against the couplings as their readings give them: the sum of squares of what is left over (chi-square,
 * textbook), and every single entry by its normalized residual (Baarda 1968; the risk shared out, Bonferroni), since many
 * sound numbers hide one bad one in a sum. An entry is told apart from another only where their tests differ by more than
 * chance makes of two that hang together as these do.
 * @param risk chance at most that a sound survey is said to disagree: half by the sum of squares, half by the worst entry
 */
export function loopCheck(
  train: Train,
  survey: number,
  lines: readonly Misalignment[],
  errors: ChainErrors,
  risk: number,
): LoopCheck {
  const seen = observed(train, [survey], lines, errors)
  const { rest, freedom } = seen
  const squares = dot(rest, rest)
  const entries = entriesOf(train, seen, squares)
  const tests = entries.filter(
    ({ unit }, k) =>
      !entries.slice(0, k).some((other) => Math.abs(dot(unit, other.unit)) > sameTest),
  ).length
  const limit = chiSquareQuantile(risk / 2, freedom)
  const entryLimit = Math.sqrt(chiSquareQuantile(risk / 2 / Math.max(1, tests), 1))
  const most = Math.max(0, ...entries.map(({ entry }) => Math.abs(entry.w)))
  const agree = squares <= limit && most <= entryLimit
  return {
    rows: seen.rows.map((row) => withApart(row, entries)),
    ...{ squares, freedom, limit, entryLimit, agree, risk },
    explains: agree ? [] : explaining(entries, freedom),
  }
}

function withApart(row: SurveyRow, entries: readonly Tested[]): SurveyedRow {
  const own = entries.find(
    ({ entry }) => entry.kind === 'point' && entry.index === row.index && entry.way === row.way,
  )
  return own ? { ...row, apart: { by: own.entry.error, u: own.u } } : row
}
