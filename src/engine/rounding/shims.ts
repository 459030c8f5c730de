import { tol } from '../../mechanics/tolerances'
import type { Micrometres } from '../../mechanics/units'
import type { Foot, PlanSettings } from '../../mechanics/train'
import { footBands } from '../../mechanics/footLimits'
import { listedMoves, nothingElse, stepsDown, type Allowed } from './allowed'
import { knownPlates, subsets } from './knownPlates'
import { micrometres, nanometres, type Plates } from './plates'

export type ShimSettings = NonNullable<PlanSettings['shims']>

/** Change that the limits of a foot allow [down, up]; what is already passed becomes "no further". */
export function footRange(foot: Foot): [Micrometres, Micrometres] {
  const bands = footBands(foot).filter(({ move }) => move === 'shim')
  return [Math.max(...bands.map(({ low }) => low)), Math.min(...bands.map(({ high }) => high))]
}

/** True where the pack under a foot is made anew when it changes: its thickness must be known for that. */
export const isRebuilt = (shims: ShimSettings, foot: Foot): boolean =>
  shims.rebuild && foot.pack !== undefined

/**
 * Changes of a foot's pack that the store can make and its limits allow, in whole steps. A pack that is
 * kept takes plates from the stock on top, or loses thickness; where its plates are known, some of them
 * may be exchanged for plates of the stock, and nothing else comes out. One that is made anew must be a
 * sum of the stock, itself a whole number of steps.
 * @param least changes under this (um) are not made, 0 aside
 */
export function footAllowed(
  shims: ShimSettings,
  plates: Plates,
  foot: Foot,
  least: Micrometres,
): Allowed {
  if (!foot.mayShim) return nothingElse
  const [low, high] = footRange(foot).map((limit) => limit * 1000) as [number, number]
  const step = nanometres(shims.step)
  const slack = tol.onLimit * 1000
  const inside = (change: number) =>
    change >= low - slack &&
    change <= high + slack &&
    Math.abs(micrometres(change)) >= least - tol.onLimit
  if (!foot.pack || !shims.rebuild) {
    const known = knownPlates(foot)
    if (known) {
      const moved = [...subsets(known).keys()].flatMap((out) =>
        [0, ...plates.sums].map((use) => use - out),
      )
      const able = moved.filter((by) => by !== 0 && by % step === 0 && inside(by))
      return listedMoves([...new Set([...able, 0])].sort((a, b) => a - b))
    }
    const up = plates.sums.filter((sum) => sum % step === 0 && inside(sum))
    return stepsDown(up, shims.step, micrometres(low), least)
  }
  const now = nanometres(foot.pack.now)
  const changes = [0, ...plates.sums]
    .filter((sum) => sum % step === 0)
    .map((sum) => sum - now)
    .filter((change) => change !== 0 && inside(change))
  return listedMoves([...changes, 0].sort((a, b) => a - b))
}
