import { tol } from '../../mechanics/tolerances'
import { firstCuts } from '../lp/cuts'
import { roundWithin, type Within } from './bothWays'
import { allowance, opened, starting, type ChoicePart } from './chosen'
import type { Meter } from './meter'
import { smallestShare } from './question'
import { search } from './search'

export type PartRounding =
  | (Within & {
      readonly kind: 'rounded'
      /** The share that the cost was minimised under. */
      readonly share: number
      readonly over: boolean
      /** Of one that is over: whether it is proven that none keeps the share asked for. */
      readonly proven: boolean
    })
  /** `proven`: no rounding keeps even the whole tolerance; else none was found. */
  | { readonly kind: 'none'; readonly proven: boolean }

/**
 * Rounds a part: within the share asked for if that can be done, else within the smallest share
 * that can, if that is not above 1.
 */
export function roundPart(given: ChoicePart, share: number, solver: Meter): PartRounding {
  const cuts = firstCuts(given.part.program)
  const within = roundWithin(given, share, solver, cuts)
  if (within.kind === 'within')
    return { ...within, kind: 'rounded', share, over: false, proven: false }
  const smallest = search(
    given.part.program,
    opened(given, () => 'any'),
    smallestShare(solver),
    cuts,
    {
      spent: allowance(solver, tol.roundingWork),
      quantum: 0,
      near: tol.noBetter,
      cutoff: Math.max(1, share),
    },
    [starting(given, 'any')],
  )
  if (!smallest.best) return { kind: 'none', proven: smallest.complete }
  const reached = smallest.best.objective * (1 + tol.settled) + tol.settledShare
  const over = roundWithin(given, reached, solver, smallest.cuts)
  if (over.kind === 'within')
    return { ...over, kind: 'rounded', share: reached, over: true, proven: within.proven }
  return { kind: 'none', proven: false }
}
