import { chiSquareLimit } from '../loop/chiSquare'
import { fitColumns } from '../loop/whitened'
import { choleskyOf, solveLower } from '../../../mechanics/cholesky'
import { solveSymmetric } from '../../../mechanics/symmetric'
import type { Train } from '../../../mechanics/train'
import { changesSince, sumOf, type CouplingChange } from './changes'
import { bodyColumns, suspectsOf, type Suspect } from './suspects'

/** A single cause that was fitted to all that changed. */
export interface FittedSuspect {
  readonly suspect: Suspect
  /** The amounts that fit best, one a column, and their covariance. */
  readonly by: readonly number[]
  readonly covariance: readonly (readonly number[])[]
  /** How many times less likely than the likeliest: 1 for that one. */
  readonly odds: number
  /** Whether chance leaves so much over more than once in a thousand. */
  readonly explains: boolean
}

/** What is different from the last time a train was read. */
export interface Since {
  readonly changes: readonly CouplingChange[]
  /**
   * False where the uncertainties of both readings explain all of it: chance passes their chi-square once in a thousand,
   * and once in a thousand lets a cause that is none explain as much as one of these would have to.
   */
  readonly differs: boolean
  /** Single causes that cannot be told from the likeliest, that one first; none where nothing differs. */
  readonly causes: readonly FittedSuspect[]
  /** Where every other machine stands against one that is taken to have stayed. */
  readonly places: Places
}

/** Places of machines, if one of them stayed: readings of couplings tell no more. */
interface Places {
  /** Index of the machine that is taken to have stayed. */
  readonly stayed: number
  readonly moved: readonly WalkedMachine[]
}

export interface WalkedMachine {
  /** Index in `bodies`. */
  readonly body: number
  /** `[ty, sy, tz, sz]` about its reference point (um, mrad), and their covariance. */
  readonly by: readonly number[]
  readonly covariance: readonly (readonly number[])[]
}

/** A cause this many times less likely than the likeliest is left out: 19 of 20 sure. */
const told = 20

/**
 * Which machine walked between two readings of a train. Only places of shafts against each other are known: one machine
 * inside the train shows at both of its couplings, and nothing else does; at an end, a machine that walked and readings
 * that are wrong look alike, and both are told. Causes are fitted by weighted least squares and told by likelihood, half
 * of chi-square plus the number of amounts that were fitted (Akaike's criterion).
 * @param then as left, @param now as found; of the same machines, see `notComparable`
 */
export const sinceOf = (then: Train, now: Train): Since => judged(now, changesSince(then, now))

/**
 * The same of several times together: what walks a little every time shows in the sum before it shows in any one.
 * @param now the train as found the last time, @param times what changed each time: readings of different times err
 * independently
 */
export const overTimes = (now: Train, times: readonly (readonly CouplingChange[])[]): Since =>
  judged(now, sumOf(times))

function judged(now: Train, changes: readonly CouplingChange[]): Since {
  const lower = triangle(changes)
  const white = (values: readonly number[]) => solveLower(lower, values)
  const values = white(changes.flatMap(({ change: { y, sy, z, sz } }) => [y, sy, z, sz]))
  const freedom = values.length
  const plain = values.reduce((sum, value) => sum + value * value, 0)
  const fits = suspectsOf(now)
    .map((suspect) => {
      const columns = suspect.columns.map(white)
      return { suspect, columns, ...fitColumns(columns, values) }
    })
    .sort((a, b) => scoreOf(a) - scoreOf(b))
  const gains = ({ columns, squares }: Fit) =>
    columns.length > 0 && plain - squares > chiSquareLimit(columns.length)
  if (plain <= chiSquareLimit(freedom) && !fits.some(gains))
    return { changes, differs: false, causes: [], places: placesOf(now, undefined, white, values) }
  const least = fits[0] ? scoreOf(fits[0]) : 0
  const causes = oneOfEach(fits)
    .map((fit): FittedSuspect => {
      const rest = freedom - fit.columns.length
      return {
        suspect: fit.suspect,
        by: fit.by,
        covariance: inverse(fit.columns),
        odds: Math.exp(scoreOf(fit) - least),
        explains: rest <= 0 || fit.squares <= chiSquareLimit(rest),
      }
    })
    .filter(({ odds, suspect }) => odds <= told && suspect.kind !== 'nothing')
  const [first] = causes
  const named = first?.suspect.kind === 'body' ? first.suspect.body : undefined
  return { changes, differs: true, causes, places: placesOf(now, named, white, values) }
}

/** Every machine against one that is fixed today, or the first, but never the one that is thought to have walked. */
function placesOf(
  train: Train,
  named: number | undefined,
  white: (values: readonly number[]) => number[],
  values: readonly number[],
): Places {
  const others = train.machines.flatMap((_, m) => (m === named ? [] : [m]))
  const stayed = others.find((m) => train.machines[m]?.held === true) ?? others[0] ?? 0
  const bodies = train.machines.flatMap((_, m) => (m === stayed ? [] : [m]))
  const columns = bodies.flatMap((m) => bodyColumns(train, m)).map(white)
  const { by } = fitColumns(columns, values)
  const covariance = inverse(columns)
  return {
    stayed,
    moved: bodies.map((body, i) => ({
      body,
      by: by.slice(4 * i, 4 * i + 4),
      covariance: covariance.slice(4 * i, 4 * i + 4).map((row) => row.slice(4 * i, 4 * i + 4)),
    })),
  }
}

interface Fit {
  readonly suspect: Suspect
  readonly columns: readonly (readonly number[])[]
  readonly squares: number
  readonly by: readonly number[]
}

const scoreOf = ({ squares, columns }: Fit): number => squares / 2 + columns.length

/** Of ways to say one thing the likeliest. */
function oneOfEach(sorted: readonly Fit[]): Fit[] {
  const seen = new Set<string>()
  return sorted.filter(({ suspect }) => {
    const place =
      suspect.kind === 'body' ? suspect.body : suspect.kind === 'readings' ? suspect.coupling : ''
    const key = `${suspect.kind} ${place}`
    if (seen.has(key)) return false
    seen.add(key)
    return true
  })
}

/** Cholesky's triangle of all changes: couplings err independently. */
function triangle(changes: readonly CouplingChange[]): number[][] {
  return choleskyOf(
    changes.flatMap(({ covariance }, c) =>
      covariance.map((row) => changes.flatMap((_, d) => row.map((value) => (c === d ? value : 0)))),
    ),
  )
}

/** Covariance of fitted amounts: the inverse of the columns' products; columns are of one weight already. */
function inverse(columns: readonly (readonly number[])[]): number[][] {
  const dot = (a: readonly number[], b: readonly number[]) =>
    a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0)
  return columns.map((_, k) =>
    solveSymmetric(
      columns.map((a) => columns.map((b) => dot(a, b))),
      columns.map((_one, j) => (j === k ? 1 : 0)),
    ),
  )
}
