import { solveLower } from '../cholesky'
import { chiSquareQuantile } from '../chiSquare'
import type { Misalignment } from '../readings/equation'
import { tol } from '../tolerances'
import type { Train } from '../train'
import { dot, type Observed } from './observed'
import { rowGains } from './rows'

/** Something that one error could have spoiled, and the error there that would explain most (um; mrad of a slope). */
export type OneEntry = {
  readonly error: number
  /** The error over its own uncertainty: standard normal where nothing is wrong. */
  readonly w: number
  /** Sum of squares that is left with it out of the way. */
  readonly left: number
} & (
  | {
      readonly kind: 'point'
      /** Indices in `surveys` and in its `points`. */
      readonly survey: number
      readonly index: number
      readonly way: 'z' | 'y'
    }
  | { readonly kind: 'coupling'; readonly coupling: number; readonly number: keyof Misalignment }
)

/** Chance at most that chance leaves more with the entry that explains a disagreement out of the way. */
const leftRisk = 0.05
/** Standard normal quantile of the 95 % that tells one entry from another. */
const sureOf95 = 1.645
/** Two entries whose tests hang together more than this are the same test. */
export const sameTest = 0.999

/** An entry with the direction in which an error of it shows, of length 1. */
export interface Tested {
  readonly entry: OneEntry
  /** How surely everything else tells the error. */
  readonly u: number
  readonly unit: readonly number[]
}

/** Every entry an error of which would show at all. */
export function entriesOf(
  train: Train,
  { rows, rest, reduced, lower }: Observed,
  squares: number,
): Tested[] {
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
  const points = rows.flatMap(({ survey, index, way }, i) =>
    tested(
      rows.map((_, j) => (i === j ? 1 : 0)),
      (found) => ({ kind: 'point', survey, index, way, ...found }),
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

/** The single entries that explain a contradiction, best first, as far as they cannot be told apart; none: no single one does. */
export function explaining(entries: readonly Tested[], freedom: number): OneEntry[] {
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
