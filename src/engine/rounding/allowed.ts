import { tol } from '../../mechanics/tolerances'
import type { Micrometres } from '../../mechanics/units'
import { micrometres, nanometres, type Nanometres } from './plates'

/** The moves that a foot, a row of feet or a body may be told to make; 0 is always one of them. */
export interface Allowed {
  /** Largest allowed move that is not above `value`; undefined where there is none. */
  down(value: Micrometres): Micrometres | undefined
  /** Smallest allowed move that is not below `value`. */
  up(value: Micrometres): Micrometres | undefined
  /** The moves around an allowed one that are allowed without a gap. */
  around(move: Micrometres): MoveRange
}

export type MoveRange = readonly [low: Micrometres, high: Micrometres]

export const anywhere: MoveRange = [-Infinity, Infinity]

const alone = (move: Micrometres): MoveRange => [move, move]

/** The allowed move nearest to a value; of two equally near the one nearer to 0. */
export function nearest(allowed: Allowed, value: Micrometres): Micrometres {
  const [down, up] = [allowed.down(value), allowed.up(value)]
  if (down === undefined || up === undefined) return down ?? up ?? 0
  const by = value - down - (up - value)
  if (Math.abs(by) > tol.samePlace) return by < 0 ? down : up
  return Math.abs(down) <= Math.abs(up) ? down : up
}

/** Whether a move (um) is one that can be made. */
export const isAllowed = (allowed: Allowed, value: Micrometres): boolean =>
  Math.abs(nearest(allowed, value) - value) <= tol.samePlace

/** One move and no other. */
const only = (move: Micrometres): Allowed => ({
  down: (value) => (value >= move - tol.samePlace ? move : undefined),
  up: (value) => (value <= move + tol.samePlace ? move : undefined),
  around: alone,
})

export const nothingElse = only(0)

/** Slides and moves along the train: any, but none under `least` that is not 0. */
export function notUnder(least: Micrometres): Allowed {
  const down = (value: Micrometres): Micrometres => {
    if (value >= least - tol.samePlace || value <= -least + tol.samePlace) return value
    return value >= -tol.samePlace ? 0 : -least
  }
  return {
    down,
    up: (value) => -down(-value) + 0,
    around: (move) => {
      if (least <= 0) return anywhere
      if (Math.abs(move) <= tol.samePlace) return [0, 0]
      return move > 0 ? [least, Infinity] : [-Infinity, -least]
    },
  }
}

/** Whether a move under `least`, 0 aside, is among them. */
export function hasUnder(allowed: Allowed, least: Micrometres): boolean {
  const [above, below] = [allowed.up(2 * tol.samePlace), allowed.down(-2 * tol.samePlace)]
  return [above, below].some((move) => move !== undefined && Math.abs(move) < least - tol.samePlace)
}

/** A list of moves, ascending, in nm. */
export function listedMoves(values: readonly Nanometres[]): Allowed {
  /** Index of the first value above `limit` (nm). */
  const after = (limit: number): number => {
    let [low, high] = [0, values.length]
    while (low < high) {
      const middle = (low + high) >> 1
      if ((values[middle] ?? 0) > limit) high = middle
      else low = middle + 1
    }
    return low
  }
  const at = (index: number): Micrometres | undefined => {
    const value = values[index]
    return value === undefined ? undefined : micrometres(value)
  }
  const slack = tol.samePlace * 1000
  return {
    down: (value) => at(after(value * 1000 + slack) - 1),
    up: (value) => at(after(value * 1000 - slack - tol.dust)),
    around: alone,
  }
}

/** What is left of `values` above 0 with every whole step below it, no lower than `low` (um). */
export function stepsDown(
  values: readonly Nanometres[],
  step: Micrometres,
  low: Micrometres,
  least: Micrometres,
): Allowed {
  const size = nanometres(step)
  const above = listedMoves([0, ...values])
  const deepest = Number.isFinite(low)
    ? Math.floor((-low + tol.samePlace) / micrometres(size))
    : 1e9
  const first = Math.max(1, Math.ceil((least - tol.samePlace) / micrometres(size)))
  const under = (steps: number): Micrometres | undefined =>
    steps <= deepest ? -micrometres(steps * size) : undefined
  const stepsTo = (value: Micrometres) => -value / micrometres(size)
  const near = tol.samePlace / micrometres(size)
  return {
    down: (value) =>
      value >= -tol.samePlace
        ? above.down(value)
        : under(Math.max(first, Math.ceil(stepsTo(value) - near))),
    up: (value) => {
      if (value > -tol.samePlace) return above.up(value)
      const steps = Math.min(deepest, Math.floor(stepsTo(value) + near))
      return steps >= first ? -micrometres(steps * size) : 0
    },
    around: alone,
  }
}

/** Turns of looking for a move that all allow; the lists of feet in a row rarely differ. */
const mostTurns = 10_000

/** Moves that every one of several allows. */
export function common(all: readonly Allowed[]): Allowed {
  const [only] = all
  if (only && all.length === 1) return only
  const settle =
    (way: 'down' | 'up') =>
    (value: Micrometres): Micrometres | undefined => {
      let at = value
      for (let turn = 0; turn < mostTurns; turn++) {
        let changed = false
        for (const one of all) {
          const next = one[way](at)
          if (next === undefined) return undefined
          if (Math.abs(next - at) > tol.samePlace) changed = true
          at = next
        }
        if (!changed && turn > 0) return at
      }
      return undefined
    }
  return { down: settle('down'), up: settle('up'), around: alone }
}
