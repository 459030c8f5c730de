import { chiSquareQuantile } from '../chiSquare'
import { tol } from '../tolerances'
import type { Minutes } from '../units'
import {
  fitAt,
  freeAt,
  gone,
  squaresLeft,
  weightedLines,
  type KnownRate,
  type TimedLine,
} from './coolingFit'

/** A time constant that is known, with its standard uncertainty; 0: exactly. */
export interface KnownTime {
  readonly time: Minutes
  readonly u: Minutes
}

/** What readings after a stop say of the line at the stop. */
export interface Cooling {
  /** The line at the moment of the stop, and the one that it goes to; undefined where no end of the way is seen. */
  readonly hot: readonly number[]
  readonly cold?: readonly number[]
  /** How fast each number leaves the hot line at the stop (um or mrad a minute). */
  readonly slope: readonly number[]
  /** What the hot line gains from every number read: four rows, four entries a time, in order. */
  readonly gains: readonly (readonly number[])[]
  /** Covariance of the hot line by that of the readings and of the time constant. */
  readonly covariance: readonly (readonly number[])[]
  /** Undefined: so long that the readings lie on a straight line. */
  readonly time?: Minutes
  /** From where to where it lies 19 times of 20; without an end where the readings set none. */
  readonly between: { readonly low: Minutes; readonly high?: Minutes }
  /** Sum of squares left over, its degrees of freedom, and what chance passes once in 20; none left over: undefined. */
  readonly test?: { readonly squares: number; readonly freedom: number; readonly limit: number }
}

/** Sum of squares by which a time constant may be worse than the best, 19 times of 20. */
const worse = 3.841
/** The fastest cooling looked for: a twentieth of the way is left at the first reading; of a known one a little more. */
const fastest = 3
const fastestKnown = 5
/** Rates looked at first, between which the best lies. */
const rates = 60
const golden = (Math.sqrt(5) - 1) / 2
const sections = 40

/**
 * Fits a(t) = cold + (hot - cold) e^(-t/T), Newton's law of cooling, one T for all four numbers, to lines read at two
 * times or more: written a(t) = hot + slope (1 - e^(-kt))/k with k = 1/T, which is a straight line at k = 0. For every k
 * hot and slope are generalized least squares; the k of the least sum of squares counts (a known T is one value more).
 * The covariance is that of the equations made linear there (JCGM 100, 5.1.2; JCGM 102, 6).
 * @param lines at least two, at different times, earliest first
 * @returns undefined where they allow a cooling so fast that they tell nothing of the stop
 */
export function coolingOf(lines: readonly TimedLine[], known?: KnownTime): Cooling | undefined {
  const last = lines.at(-1)?.after ?? 0
  const first = lines.find(({ after }) => after > 0)?.after ?? last
  const atStop = lines[0]?.after === 0
  if (known ? first > fastestKnown * known.time : lines.length < 3) return undefined
  if (known?.u === 0) {
    const { time } = known
    return answer(lines, 1 / time, { between: { low: time, high: time } })
  }
  const prior = known && rateOf(known)
  const sums = weightedLines(lines)
  const squaresAt = (rate: number) =>
    squaresLeft(sums, rate) + (prior ? ((rate - prior.rate) / prior.u) ** 2 : 0)
  const top = prior
    ? Math.min(prior.rate + 6 * prior.u, (2 * fastestKnown) / first)
    : fastest / first
  const looked = ratesUpTo(top, tol.slowCooling / last).map((rate) => at(rate, squaresAt))
  const best = lowest(looked, squaresAt)
  const limit = best.squares + worse
  const along = [...looked, best].sort((a, b) => a.rate - b.rate)
  const slow = edgeOf(along, limit, squaresAt)
  const fast = edgeOf(along.reverse(), limit, squaresAt)
  if (fast === undefined && !prior && !atStop) return undefined
  return answer(lines, best.rate * last < tol.slowCooling ? 0 : best.rate, {
    prior,
    between: { low: 1 / (fast ?? top), ...(slow !== undefined && { high: 1 / slow }) },
  })
}

/** The four numbers of the fitted line so many minutes after the stop (um, mrad): Newton's law of cooling. */
export const lineAfter = ({ hot, slope, time }: Cooling, after: Minutes): number[] =>
  hot.map((value, i) => value + (slope[i] ?? 0) * gone(time === undefined ? 0 : 1 / time, after))

/** A rate of cooling (one by minutes) and the sum of squares that it leaves. */
interface Look {
  readonly rate: number
  readonly squares: number
}
type SquaresAt = (rate: number) => number
const at = (rate: number, squaresAt: SquaresAt): Look => ({ rate, squares: squaresAt(rate) })

/** A rate from a time constant: the same relative uncertainty. */
const rateOf = ({ time, u }: KnownTime): KnownRate => ({ rate: 1 / time, u: u / (time * time) })

/** None, and so many more in one ratio. */
function ratesUpTo(top: number, least: number): number[] {
  const ratio = (top / least) ** (1 / (rates - 1))
  return [0, ...Array.from({ length: rates }, (_, i) => least * ratio ** i)]
}

/** The best of what was looked at, refined by the golden section between its neighbours. */
function lowest(looked: readonly Look[], squaresAt: SquaresAt): Look {
  const i = looked.reduce((b, { squares }, k) => (squares < (looked[b]?.squares ?? 0) ? k : b), 0)
  const known = looked[i] ?? at(0, squaresAt)
  let low = looked[i - 1]?.rate ?? known.rate
  let high = looked[i + 1]?.rate ?? known.rate
  for (let n = 0; n < sections; n++) {
    const part = golden * (high - low)
    if (squaresAt(high - part) < squaresAt(low + part)) high = low + part
    else low = high - part
  }
  const refined = at((low + high) / 2, squaresAt)
  return refined.squares < known.squares ? refined : known
}

/** The first rate in order that is not over the limit; undefined where the first of all is not. */
function edgeOf(along: readonly Look[], limit: number, squaresAt: SquaresAt): number | undefined {
  const i = along.findIndex(({ squares }) => squares <= limit)
  if (i <= 0) return undefined
  let [outside, inside] = [along[i - 1]?.rate ?? 0, along[i]?.rate ?? 0]
  for (let n = 0; n < sections; n++) {
    const middle = (inside + outside) / 2
    if (squaresAt(middle) <= limit) inside = middle
    else outside = middle
  }
  return inside
}

/** The fit at the best rate, its equations made linear in the rate too where that is not known exactly. */
function answer(
  lines: readonly TimedLine[],
  rate: number,
  {
    prior,
    between,
  }: {
    readonly prior?: KnownRate | undefined
    readonly between: Cooling['between']
  },
): Cooling {
  const exact = between.low === between.high
  const fit = fitAt(lines, rate)
  const hot = fit.unknowns.slice(0, 4)
  const slope = fit.unknowns.slice(4)
  const { gains, covariance } = exact ? fit : freeAt(lines, rate, slope, prior)
  const squares = fit.squares + (prior ? ((rate - prior.rate) / prior.u) ** 2 : 0)
  const freedom = 4 * lines.length + (prior ? 1 : 0) - (exact ? 8 : 9)
  return {
    hot,
    slope,
    ...(rate > 0 && { cold: hot.map((value, i) => value + (slope[i] ?? 0) / rate) }),
    gains: gains.slice(0, 4).map((row) => row.slice(0, 4 * lines.length)),
    covariance: covariance.slice(0, 4).map((row) => row.slice(0, 4)),
    ...(rate > 0 && { time: 1 / rate }),
    between,
    ...(freedom > 0 && { test: { squares, freedom, limit: chiSquareQuantile(0.05, freedom) } }),
  }
}
