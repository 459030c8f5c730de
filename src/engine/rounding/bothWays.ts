import { tol } from '../../mechanics/tolerances'
import type { Micrometres } from '../../mechanics/units'
import type { Cut, Program } from '../lp/program'
import type { Meter } from './meter'
import { isAllowed } from './allowed'
import type { Open } from './branches'
import { allowance, opened, starting, type Care, type ChoicePart } from './chosen'
import { dive, type Start } from './dive'
import { fewestChanged, widest } from './fewest'
import { leastCost, leastCostAtOnce, smallestShare, type Question } from './question'
import { search, type Found, type Searched } from './search'

/** A part rounded within a share; costs in program units. */
export interface Within {
  readonly columns: readonly number[]
  readonly moves: readonly Micrometres[]
  readonly cost: number
  /** No rounding of the part within the share costs less, small moves told or not. */
  readonly bound: number
  /** The cheapest that was found with small moves told, and with all of them left alone. */
  readonly told: number
  readonly alone: number | undefined
}

export type WithinOutcome =
  | (Within & { readonly kind: 'within' })
  /** `proven`: there is none; else none was found. */
  | { readonly kind: 'none'; readonly proven: boolean }

/**
 * The cheapest rounding of a part within a share, searched both with moves under `plan.leave` left
 * alone and with any move. They are left alone where that costs at most `tol.forLeaving` more.
 */
export function roundWithin(
  given: ChoicePart,
  share: number,
  solver: Meter,
  cuts: readonly Cut[],
): WithinOutcome {
  const ask = leastCost(solver, share)
  const tidy = opened(given, () => 'tidy')
  const any = opened(given, () => 'any')
  const same = given.choices.every((choice) => choice.tidy === choice.any)
  const alone = cheapest(given, tidy, 'tidy', share, solver, cuts)
  const told = same
    ? alone
    : alone.best
      ? quickly(given, any, alone.best, share, solver, alone.cuts)
      : cheapest(given, any, 'any', share, solver, cuts)
  if (!told.best) return { kind: 'none', proven: told.complete }
  const chosen =
    alone.best && alone.best.objective <= told.best.objective * (1 + tol.forLeaving)
      ? { best: alone.best, open: tidy, cuts: alone.cuts }
      : tidied(given, told.best, ask, solver, told.cuts)
  const fewest = fewestChanged(given, chosen.open, chosen.best, share, solver, chosen.cuts)
  const final = widest(given, chosen.open, fewest, share, solver, chosen.cuts)
  return {
    kind: 'within',
    columns: final.columns,
    moves: final.moves,
    cost: chosen.best.objective,
    // a search that was ended at once has promised nothing; no cost is below 0
    bound: Math.max(0, Math.min(told.bound, told.best.objective)),
    told: told.best.objective,
    alone: alone.best?.objective,
  }
}

/**
 * A search to its end or to the end of its work; one that is ended with nothing is tried once more from
 * where a dive comes to, and then goes on quickly with what it has.
 */
function cheapest(
  given: ChoicePart,
  open: readonly Open[],
  care: Care,
  share: number,
  solver: Meter,
  cuts: readonly Cut[],
): Searched {
  const { quantum } = given
  const { program } = given.part
  const ask = leastCost(solver, share)
  const limits = () => ({
    spent: allowance(solver, tol.roundingWork),
    quantum,
    near: tol.settled,
    cutoff: Infinity,
    quick: leastCostAtOnce(solver, share),
  })
  let searched = search(program, open, ask, cuts, limits(), [starting(given, care)])
  if (!searched.best && !searched.complete) {
    const starts = roomier(program, open, share, solver, searched.cuts)
    const again = search(program, open, ask, searched.cuts, limits(), starts)
    const reached = Math.min(searched.bound, again.best?.objective ?? Infinity)
    searched = { ...again, bound: Math.max(again.bound, reached) }
  }
  if (searched.complete) return searched
  const on = quickly(given, open, searched.best, share, solver, searched.cuts)
  const reached = Math.min(searched.bound, on.best?.objective ?? Infinity)
  return { ...on, bound: Math.max(on.bound, reached), cuts: searched.cuts }
}

/** A rounding, or one that is cheaper than what is known, in a search of many small programs. */
function quickly(
  { part, quantum }: ChoicePart,
  open: readonly Open[],
  known: Found | undefined,
  share: number,
  solver: Meter,
  cuts: readonly Cut[],
): Searched {
  const ask = leastCost(solver, share)
  const quick = leastCostAtOnce(solver, share)
  const limits = {
    spent: allowance(solver, tol.roundingWork),
    quantum,
    near: tol.settled,
    cutoff: Infinity,
  }
  return search(part.program, open, ask, cuts, { ...limits, known, quick })
}

/**
 * Where to start from instead: a dive half way between the smallest share that can be reached and the one
 * asked for, where rounding has room.
 */
function roomier(
  program: Program,
  open: readonly Open[],
  share: number,
  solver: Meter,
  cuts: readonly Cut[],
): Start[] {
  const floor = smallestShare(solver)(program, cuts)
  if (floor.kind !== 'point') return []
  return dive(program, open, leastCost(solver, (floor.bound + share) / 2), floor.cuts)
}

/** One small move after the other is left alone where that works and is not too dear. */
function tidied(
  given: ChoicePart,
  best: Found,
  ask: Question,
  solver: Meter,
  cuts: readonly Cut[],
): { best: Found; open: Open[]; cuts: readonly Cut[] } {
  const { part, quantum } = given
  const cutoff = best.objective * (1 + tol.forLeaving)
  const alone = new Set<number>()
  let now = { best, open: opened(given, () => 'any'), cuts }
  for (const i of smallMoves(given, best)) {
    const open = opened(given, (c) => (c === i || alone.has(c) ? 'tidy' : 'any'))
    const limits = { spent: allowance(solver, tol.sideWork), quantum, near: tol.settled, cutoff }
    const less = search(part.program, open, ask, now.cuts, limits)
    if (!less.best || less.best.objective > cutoff) continue
    alone.add(i)
    now = { best: less.best, open, cuts: less.cuts }
  }
  return now
}

/** Choices that make a move which is too small to be told, the smallest first. */
function smallMoves({ choices }: ChoicePart, { moves }: Found): number[] {
  const size = (i: number) => Math.abs(moves[i] ?? 0)
  return choices
    .flatMap(({ tidy }, i) => (isAllowed(tidy, moves[i] ?? 0) ? [] : [i]))
    .sort((a, b) => size(a) - size(b) || a - b)
}
