import { chiSquareQuantile } from '../../../mechanics/chiSquare'
import { leastSquares, type LeastSquares } from '../../../mechanics/leastSquares'
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
  const values = changes.flatMap(({ change: { y, sy, z, sz } }) => [y, sy, z, sz])
  const covariance = together(changes)
  const fit = (columns: readonly (readonly number[])[]): LeastSquares =>
    leastSquares({
      values,
      design: values.map((_, i) => columns.map((column) => column[i] ?? 0)),
      covariance,
    })
  const freedom = values.length
  const plain = fit([]).squares
  const fits = suspectsOf(now)
    .map((suspect): Fit => ({ suspect, ...fit(suspect.columns) }))
    .sort((a, b) => scoreOf(a) - scoreOf(b))
  const gains = ({ suspect: { columns }, squares }: Fit) =>
    columns.length > 0 && plain - squares > limitOf(columns.length)
  if (plain <= limitOf(freedom) && !fits.some(gains))
    return { changes, differs: false, causes: [], places: placesOf(now, undefined, fit) }
  const least = fits[0] ? scoreOf(fits[0]) : 0
  const causes = oneOfEach(fits)
    .map(({ suspect, unknowns, ...one }): FittedSuspect => {
      const rest = freedom - unknowns.length
      return {
        suspect,
        by: unknowns,
        covariance: one.covariance,
        odds: Math.exp(scoreOf({ suspect, ...one }) - least),
        explains: rest <= 0 || one.squares <= limitOf(rest),
      }
    })
    .filter(({ odds, suspect }) => odds <= told && suspect.kind !== 'nothing')
  const [first] = causes
  const named = first?.suspect.kind === 'body' ? first.suspect.body : undefined
  return { changes, differs: true, causes, places: placesOf(now, named, fit) }
}

/** What chance passes once in a thousand: a sum of squares of so many independent errors, each in its uncertainty. */
const limitOf = (freedom: number): number => chiSquareQuantile(0.001, freedom)

/** Every machine against one that is fixed today, or the first, but never the one that is thought to have walked. */
function placesOf(
  train: Train,
  named: number | undefined,
  fit: (columns: readonly (readonly number[])[]) => LeastSquares,
): Places {
  const others = train.machines.flatMap((_, m) => (m === named ? [] : [m]))
  const stayed = others.find((m) => train.machines[m]?.held === true) ?? others[0] ?? 0
  const bodies = train.machines.flatMap((_, m) => (m === stayed ? [] : [m]))
  const { unknowns, covariance } = fit(bodies.flatMap((m) => bodyColumns(train, m)))
  const own = <Entry>(list: readonly Entry[], i: number) => list.slice(4 * i, 4 * i + 4)
  return {
    stayed,
    moved: bodies.map((body, i) => ({
      body,
      by: own(unknowns, i),
      covariance: own(covariance, i).map((row) => own(row, i)),
    })),
  }
}

interface Fit extends Pick<LeastSquares, 'unknowns' | 'covariance' | 'squares'> {
  readonly suspect: Suspect
}

const scoreOf = ({ squares, suspect: { columns } }: Pick<Fit, 'squares' | 'suspect'>): number =>
  squares / 2 + columns.length

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

/** Covariance of all changes: couplings err independently. */
const together = (changes: readonly CouplingChange[]): number[][] =>
  changes.flatMap(({ covariance }, c) =>
    covariance.map((row) => changes.flatMap((_, d) => row.map((value) => (c === d ? value : 0)))),
  )
