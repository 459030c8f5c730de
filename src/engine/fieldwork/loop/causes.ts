import type { Motion } from '../../../mechanics/motion'
import type { Train } from '../../../mechanics/train'
import { chiSquareLimit } from './chiSquare'
import { whitened, type Evidence } from './evidence'
import { hypothesesOf, type Hypothesis } from './hypotheses'
import { fitColumns } from './whitened'

/** A cause that was fitted to the differences. */
export interface FittedCause {
  readonly cause: Hypothesis
  /** The amounts that fit best, one a column. */
  readonly by: readonly number[]
  /** Root mean square of what it leaves over, in standard uncertainties. */
  readonly left: number
  /** How many times less likely than the likeliest: 1 for that one. */
  readonly odds: number
  /** Whether chance leaves so much over more than once in a thousand. */
  readonly explains: boolean
}

/** What the differences come to. */
export interface JudgedCauses {
  /** False where readings and work explain them: chance passes their chi-square once in a thousand. */
  readonly differs: boolean
  /** The new readings of some coupling agree with no line at all. */
  readonly contradict: readonly number[]
  /** Causes that cannot be told from the likeliest, that one first. */
  readonly causes: readonly FittedCause[]
}

/** A cause this many times less likely than the likeliest is left out: 19 of 20 sure. */
const told = 20

/**
 * Fits every cause to the differences by weighted least squares, and tells them by likelihood: half of chi-square plus
 * the number of amounts that were fitted, so that a cause with more to choose from must explain more (Akaike's
 * criterion). The odds of two causes are e to the power of the difference.
 */
export function judgeDifferences(
  train: Train,
  motions: readonly Motion[],
  evidence: Evidence,
): JudgedCauses {
  const { rows, zeros } = evidence
  const values = whitened(
    evidence,
    rows.map(({ difference }) => difference),
  )
  const free = zeros.map((column) => whitened(evidence, column))
  const freedom = rows.length - zeros.length
  const plain = fitColumns(free, values).squares
  const differs = freedom > 0 && plain > chiSquareLimit(freedom)
  if (!differs) return { differs, contradict: [], causes: [] }
  const fits = hypothesesOf(train, motions, evidence).flatMap((cause) =>
    fitOf(evidence, cause, values, free),
  )
  const score = ({ squares, cause }: Fit) => squares / 2 + cause.columns.length
  const best = bestOfEach(fits.sort((a, b) => score(a) - score(b)))
  const least = best[0] ? score(best[0]) : 0
  const causes = best
    .map(({ cause, by, squares }): FittedCause => {
      const rest = Math.max(1, freedom - cause.columns.length)
      return {
        ...{ cause, by },
        left: Math.sqrt(squares / rest),
        odds: Math.exp(score({ cause, by, squares }) - least),
        explains: squares <= chiSquareLimit(rest),
      }
    })
    .filter(({ odds }) => odds <= told)
  return { differs, contradict: contradicting(evidence, values, free), causes }
}

interface Fit {
  readonly cause: Hypothesis
  readonly by: readonly number[]
  readonly squares: number
}

function fitOf(
  evidence: Evidence,
  cause: Hypothesis,
  values: readonly number[],
  free: readonly (readonly number[])[],
): Fit[] {
  const columns = cause.columns.map((column) => whitened(evidence, column))
  // what no reading can show is no cause of what they show
  if (columns.some((column) => Math.hypot(...column) === 0)) return []
  const fixed = cause.fixed && whitened(evidence, cause.fixed)
  if (fixed && Math.hypot(...fixed) === 0) return []
  const { turned } = cause
  const read = turned
    ? whitened(
        evidence,
        evidence.rows.map(({ difference, expected }, i) =>
          turned[i] === true ? -difference - 2 * expected : difference,
        ),
      )
    : values
  const rest = fixed ? read.map((value, i) => value - (fixed[i] ?? 0)) : read
  const { by, squares } = fitColumns([...free, ...columns], rest)
  const own = by.slice(free.length)
  const [low, high] = cause.believed ?? [-Infinity, Infinity]
  return own.every((value) => value >= low && value <= high) ? [{ cause, by: own, squares }] : []
}

/** Of causes in one place the likeliest: several ways of saying one thing are one. */
function bestOfEach(sorted: readonly Fit[]): Fit[] {
  const seen = new Set<string>()
  return sorted.filter(({ cause: { kind, coupling, body, set, hour } }) => {
    const place =
      kind === 'dial' ? `${set ?? ''} ${hour ?? ''}` : kind === 'sign of a dial' ? set : ''
    const key = `${kind} ${coupling ?? ''} ${body ?? ''} ${place ?? ''}`
    if (seen.has(key)) return false
    seen.add(key)
    return true
  })
}

/** Couplings whose readings leave too much over whatever line is taken. */
function contradicting(
  evidence: Evidence,
  values: readonly number[],
  free: readonly (readonly number[])[],
): number[] {
  const { rows } = evidence
  const couplings = [...new Set(rows.map(({ coupling }) => coupling))]
  const lineOf = (coupling: number) =>
    [0, 1, 2, 3].map((k) =>
      whitened(
        evidence,
        rows.map((row) => (row.coupling === coupling ? (row.gains[k] ?? 0) : 0)),
      ),
    )
  // with the lines of all couplings free nothing but the readings themselves can disagree
  const all = fitColumns([...free, ...couplings.flatMap(lineOf)], values).squares
  const freedom = rows.length - free.length - 4 * couplings.length
  if (freedom <= 0 || all <= chiSquareLimit(freedom)) return []
  return couplings.filter((coupling) => {
    const others = couplings.filter((one) => one !== coupling)
    const own = rows.filter((row) => row.coupling === coupling)
    const each = own.map((one) =>
      whitened(
        evidence,
        rows.map((row) => (row === one ? 1 : 0)),
      ),
    )
    const without = fitColumns([...free, ...others.flatMap(lineOf), ...each], values).squares
    const gone = own.length - 4 - new Set(own.map(({ set }) => set)).size
    return all - without > chiSquareLimit(Math.max(1, gone))
  })
}
