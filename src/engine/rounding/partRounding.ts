import { tol } from '../../mechanics/tolerances'
import type { Micrometres } from '../../mechanics/units'
import { leastShare } from '../lp/leastShare'
import { firstCuts } from '../lp/cuts'
import type { Part } from '../lp/parts'
import type { Cut, Program } from '../lp/program'
import type { Meter } from './meter'
import { isAllowed, nearest, nothingElse, type Allowed } from './allowed'
import type { Choice } from './choices'
import { leastCost, smallestShare } from './question'
import { bounded, moveOf, type Open } from './branches'
import { dive, type Start } from './dive'
import { search, type Found, type Searched } from './search'

/** A part of the train with its choices. */
export interface ChoicePart {
  readonly part: Part
  readonly choices: readonly Choice[]
  /** What the plan before rounding wants of each choice (um). */
  readonly wanted: readonly Micrometres[]
  /** Every cost of the part is a multiple of this (program units); 0 where it is not. */
  readonly quantum: number
}

export type PartRounding =
  | {
      readonly kind: 'rounded'
      readonly columns: readonly number[]
      readonly moves: readonly Micrometres[]
      /** Program units. */
      readonly cost: number
      /** No rounding of the part within `share` costs less (program units). */
      readonly bound: number
      /** The share that the cost was minimised under. */
      readonly share: number
      readonly over: boolean
    }
  /** `proven`: no rounding keeps even the whole tolerance; else none was found. */
  | { readonly kind: 'none'; readonly proven: boolean }

/**
 * Rounds a part: within the share asked for if that can be done, else within the smallest share
 * that can, if that is not above 1. Small moves are left alone wherever a rounding without them is
 * found.
 */
export function roundPart(given: ChoicePart, share: number, solver: Meter): PartRounding {
  const cuts = firstCuts(given.part.program)
  const within = roundWithin(given, share, solver, cuts)
  if (within) return { ...within, share, over: false }
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
  if (over) return { ...over, share: reached, over: true }
  return { kind: 'none', proven: false }
}

/** Tells when a question has cost its work. */
function allowance(solver: Meter, most: number): () => boolean {
  const end = solver.work() + most
  return () => solver.work() >= end
}

type Care = 'tidy' | 'any'

/** The part's choices with what each may be. */
function opened(
  { part, choices }: ChoicePart,
  care: (choice: number) => Care,
  fixed?: ReadonlySet<number>,
): Open[] {
  return choices.map((choice, i) => ({
    row: part.limits.indexOf(choice.row),
    allowed: fixed?.has(i) ? nothingElse : choice[care(i)],
  }))
}

/** Every shim rounded by itself, slides free. */
const starting = ({ choices, wanted }: ChoicePart, care: Care): (Micrometres | undefined)[] =>
  choices.map((choice, i) =>
    choice.kind === 'shim' ? nearest(choice[care], wanted[i] ?? 0) : undefined,
  )

function roundWithin(
  given: ChoicePart,
  share: number,
  solver: Meter,
  cuts: readonly Cut[],
): Omit<Extract<PartRounding, { kind: 'rounded' }>, 'share' | 'over'> | undefined {
  const { part, quantum } = given
  const { program } = part
  const ask = leastCost(solver, share)
  const cheapest = (open: readonly Open[], care: Care): Searched => {
    const spent = allowance(solver, tol.roundingWork)
    const limits = { spent, quantum, near: tol.settled, cutoff: Infinity }
    return search(program, open, ask, cuts, limits, [starting(given, care)])
  }
  /** A search that was ended with nothing is tried once more from where a dive comes to. */
  const found = (searched: Searched, open: readonly Open[]): Searched => {
    if (searched.best || searched.complete) return searched
    const starts = roomier(program, open, share, solver, searched.cuts)
    const limits = {
      spent: allowance(solver, tol.roundingWork),
      quantum,
      near: tol.settled,
      cutoff: Infinity,
    }
    const again = search(program, open, ask, searched.cuts, limits, starts)
    return {
      ...again,
      bound: Math.max(again.bound, Math.min(searched.bound, again.best?.objective ?? Infinity)),
    }
  }
  let open = opened(given, () => 'tidy')
  let searched = found(cheapest(open, 'tidy'), open)
  if (!searched.best) {
    open = opened(given, () => 'any')
    searched = found(cheapest(open, 'any'), open)
    if (!searched.best) return undefined
    // one small move after the other left alone where that works
    const tidied = new Set<number>()
    for (const i of smallMoves(given, searched.best)) {
      const without = opened(given, (c) => (c === i || tidied.has(c) ? 'tidy' : 'any'))
      const less = search(program, without, ask, searched.cuts, {
        spent: allowance(solver, tol.sideWork),
        quantum,
        near: tol.settled,
        cutoff: Infinity,
      })
      if (!less.best) continue
      tidied.add(i)
      open = without
      searched = less
    }
  }
  const { best } = searched
  if (!best) return undefined
  const fewest = fewestChanged(given, open, best, share, solver, searched.cuts)
  const final = widest(given, open, fewest, share, solver, searched.cuts)
  return {
    kind: 'rounded',
    columns: final.columns,
    moves: final.moves,
    cost: best.objective,
    // a search that was ended at once has promised nothing; no cost is below 0
    bound: Math.max(0, Math.min(searched.bound, best.objective)),
  }
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

/** Choices that make a move which is too small to be told, the smallest first. */
function smallMoves({ choices }: ChoicePart, { moves }: Found): number[] {
  const size = (i: number) => Math.abs(moves[i] ?? 0)
  return choices
    .flatMap(({ tidy }, i) => (isAllowed(tidy, moves[i] ?? 0) ? [] : [i]))
    .sort((a, b) => size(a) - size(b) || a - b)
}

/** Of roundings that cost the same, one that changes fewer feet: each change is tried without. */
function fewestChanged(
  { part, choices, quantum }: ChoicePart,
  open: readonly Open[],
  best: Found,
  share: number,
  solver: Meter,
  cuts: readonly Cut[],
): Found {
  let found = best
  const out = new Set<number>()
  const order = choices
    .flatMap(({ kind }, i) => (kind === 'shim' && found.moves[i] !== 0 ? [i] : []))
    .sort((a, b) => Math.abs(found.moves[a] ?? 0) - Math.abs(found.moves[b] ?? 0) || a - b)
  for (const i of order) {
    if (found.moves[i] === 0) continue
    const without = open.map(({ row, allowed }, c): Open => {
      const stays: Allowed = c === i || out.has(c) ? nothingElse : allowed
      return { row, allowed: stays }
    })
    const cutoff = found.objective * (1 + 2 * tol.settled) + 2 * tol.settled
    const limits = { spent: allowance(solver, tol.sideWork), quantum, near: 0, cutoff }
    const less = search(part.program, without, leastCost(solver, share), cuts, limits)
    const count = ({ moves }: Found) => moves.filter((move) => move !== 0).length
    if (!less.best || less.best.objective > cutoff || count(less.best) >= count(found)) continue
    out.add(i)
    found = { ...less.best, objective: Math.min(found.objective, less.best.objective) }
  }
  return found
}

/** With the shims as they are, the slides that leave the smallest worst share at the same cost. */
function widest(
  { part }: ChoicePart,
  open: readonly Open[],
  best: Found,
  share: number,
  solver: Meter,
  cuts: readonly Cut[],
): Found {
  const ranges = open.map(({ allowed }, i) => allowed.around(best.moves[i] ?? 0))
  if (ranges.every(([low, high]) => low === high)) return best
  const program = bounded(part.program, open, ranges)
  const cost = best.objective * (1 + tol.equalCost) + tol.dust
  const margin = leastShare(program, { ask: 'margin', share, cost }, cuts, solver)
  if (margin.kind !== 'optimal') return best
  const { columns } = margin.point.answer
  const moves = open.map(({ row }) => moveOf(part.program, row, columns))
  if (!open.every(({ allowed }, i) => isAllowed(allowed, moves[i] ?? 0))) return best
  return {
    columns,
    moves: moves.map((move, i) => nearest(open[i]?.allowed ?? nothingElse, move)),
    objective: best.objective,
  }
}
