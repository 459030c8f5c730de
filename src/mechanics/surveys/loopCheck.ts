import { solveLower } from '../cholesky'
import { chiSquareQuantile } from '../chiSquare'
import type { Misalignment } from '../readings/equation'
import { tol } from '../tolerances'
import type { Train } from '../train'
import type { Micrometres } from '../units'
import type { ChainErrors } from './chainAxes'
import { dot, observed, type Observed } from './observed'
import { rowGains, type SurveyRow } from './rows'

/** One number of a survey beside what everything else says of it: the couplings and the other places together. */
export interface SurveyedRow extends SurveyRow {
  /** The number less that, and the standard uncertainty of the difference; missing where nothing else tells it. */
  readonly apart?: { readonly by: Micrometres; readonly u: Micrometres }
}

/** Something that one error could have spoiled, and the error there that would explain most (um; mrad of a slope). */
export type OneEntry = {
  readonly error: number
  /** The error over its own uncertainty: standard normal where nothing is wrong. */
  readonly w: number
  /** Sum of squares that is left with it out of the way. */
  readonly left: number
} & (
  | { readonly kind: 'point'; readonly index: number; readonly way: 'z' | 'y' }
  | { readonly kind: 'coupling'; readonly coupling: number; readonly number: keyof Misalignment }
)

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

/** Chance at most that chance leaves more with the entry that explains a disagreement out of the way. */
const leftRisk = 0.05
/** Standard normal quantile of the 95 % that tells one entry from another. */
const sureOf95 = 1.645
/** Two entries whose tests hang together more than this are the same test. */
const sameTest = 0.999

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

/** An entry with the direction in which an error of it shows, of length 1. */
interface Tested {
  readonly entry: OneEntry
  /** How surely everything else tells the error. */
  readonly u: number
  readonly unit: readonly number[]
}

/** Every entry an error of which would show at all. */
function entriesOf(train: Train, { rows, rest, reduced, lower }: Observed, squares: number) {
  const tested = (
    signature: readonly number[],
    of: (found: Pick<OneEntry, 'error' | 'w' | 'left'>) => OneEntry,
  ): Tested[] => {
    const part = reduced(signature)
    const size = Math.hypot(...part)
    // nothing shows where the survey's own line takes it all
    if (size <= tol.singular * Math.hypot(...solveLower(lower, signature))) return []
    const unit = part.map((value) => value / size)
    const w = dot(unit, rest)
    const entry = of({ error: w / size, w, left: Math.max(0, squares - w * w) })
    return [{ entry, u: 1 / size, unit }]
  }
  const points = rows.flatMap(({ index, way }, i) =>
    tested(
      rows.map((_, j) => (i === j ? 1 : 0)),
      (found) => ({ kind: 'point', index, way, ...found }),
    ),
  )
  const couplings = train.couplings.flatMap((_, coupling) =>
    (['y', 'sy', 'z', 'sz'] as const).flatMap((number, k) =>
      tested(
        rows.map((row) => rowGains(train, row, coupling)[k] ?? 0),
        (found) => ({ kind: 'coupling', coupling, number, ...found }),
      ),
    ),
  )
  return [...points, ...couplings]
}

function withApart(row: SurveyRow, entries: readonly Tested[]): SurveyedRow {
  const own = entries.find(
    ({ entry }) => entry.kind === 'point' && entry.index === row.index && entry.way === row.way,
  )
  return own ? { ...row, apart: { by: own.entry.error, u: own.u } } : row
}

function explaining(entries: readonly Tested[], freedom: number): OneEntry[] {
  const [best, ...others] = [...entries].sort((a, b) => Math.abs(b.entry.w) - Math.abs(a.entry.w))
  if (!best) return []
  // what is left must be what chance leaves, of every entry that is named
  const most = freedom > 1 ? chiSquareQuantile(leftRisk, freedom - 1) : Infinity
  if (best.entry.left > most) return []
  const alike = others.filter(({ entry, unit }) => {
    if (entry.left > most) return false
    const together = Math.abs(dot(unit, best.unit))
    const lead = Math.abs(best.entry.w) - Math.abs(entry.w)
    return together > sameTest || lead <= sureOf95 * Math.sqrt(2 * Math.max(0, 1 - together))
  })
  return [best, ...alike].map(({ entry }) => entry)
}
