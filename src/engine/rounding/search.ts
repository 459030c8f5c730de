import { tol } from '../../mechanics/tolerances'
import type { Micrometres } from '../../mechanics/units'
import type { Cut, Program } from '../lp/program'
import { anywhere, isAllowed, nearest, type Allowed, type MoveRange } from './allowed'
import { apart, bounded, branched, farthest, moveOf, touching, type Open } from './branches'
import type { Question, Relaxed } from './question'

export interface Found {
  /** Values of the part's columns, every choice at an allowed move. */
  readonly columns: readonly number[]
  /** Move of each choice (um). */
  readonly moves: readonly Micrometres[]
  readonly objective: number
}

/** What a search came to; objectives in program units of cost, or a share, by what was asked. */
export interface Searched {
  /** The best point that was found. */
  readonly best: Found | undefined
  /** Nothing better exists; Infinity where nothing exists at all. */
  readonly bound: number
  /** True where the search came to its end, so that the best found is the best there is. */
  readonly complete: boolean
  readonly nodes: number
  /** Tangents of the first program. */
  readonly cuts: readonly Cut[]
}

/** When to end a search; objectives in program units of cost, or a share, by what is asked. */
export interface Limits {
  /** Asked before every program but the first: true ends the search with what there is. */
  readonly spent: () => boolean
  /** Objectives come in multiples of this; 0 where they do not. */
  readonly quantum: number
  /** Two objectives nearer than this part are equal. */
  readonly near: number
  /** Points above this are of no use. */
  readonly cutoff: number
  /** A point that is already known, to be bettered. */
  readonly known?: Found | undefined
  /**
   * Asked of each node before the question proper, which is left for nodes whose moves can all be made. The
   * search then follows each promising node down to its end before it looks at the next.
   */
  readonly quick?: Question
}

/** Programs spent on each start before the search proper. */
const mostPerStart = 40

interface Node {
  readonly ranges: readonly MoveRange[]
  /** Nothing in the node is better. */
  readonly bound: number
  /** Tangents that counted where the node came from. */
  readonly cuts: readonly Cut[]
}

/**
 * Branch and bound: solves the program with all moves free, and where a choice comes out at a move
 * that cannot be made, looks at the next smaller and the next larger one apart. What a program
 * promises is its dual bound, so that no branch is cut off without proof. The search goes deep first
 * until something is found, then where the promise is best; what it may spend is counted in work, not time.
 * @param starts moves to look at first, such as every one rounded by itself
 */
export function search(
  program: Program,
  open: readonly Open[],
  ask: Question,
  cuts: readonly Cut[],
  limits: Limits,
  starts: readonly (readonly (Micrometres | undefined)[])[] = [],
): Searched {
  let first: readonly Cut[] | undefined
  let best = limits.known
  let nodes = 0
  let lost = Infinity
  const promised = (bound: number) =>
    limits.quantum > 0
      ? Math.ceil((bound - tol.wholeStep * limits.quantum) / limits.quantum - tol.wholeStep) *
        limits.quantum
      : bound
  const enough = () => {
    const known = best ? best.objective : limits.cutoff
    return known === Infinity ? known : known - limits.near * Math.max(1, Math.abs(known))
  }
  const spent = () => nodes > 0 && limits.spent()
  const solved = (ranges: readonly MoveRange[], from: readonly Cut[], question = ask): Relaxed => {
    nodes++
    return question(bounded(program, open, ranges), from)
  }
  const movesAt = (columns: readonly number[]) =>
    open.map(({ row }) => moveOf(program, row, columns))
  /** What a node comes to; by the quick question only where that cuts it off or says where to branch. */
  const relaxed = ({ ranges, cuts: from }: Node): Relaxed => {
    if (!limits.quick) return solved(ranges, from)
    const outcome = solved(ranges, from, limits.quick)
    if (outcome.kind !== 'point' || promised(outcome.bound) >= enough()) return outcome
    const done = farthest(open, movesAt(outcome.columns)) === undefined
    return done ? solved(ranges, outcome.cuts) : outcome
  }
  /** Fixes every choice at its allowed move and solves once more for what is free. */
  const settle = (columns: readonly number[], from: readonly Cut[]): boolean => {
    const moves = open.map(({ row, allowed }) => nearest(allowed, moveOf(program, row, columns)))
    const around = open.map(({ allowed }, i) => allowed.around(moves[i] ?? 0))
    const outcome = solved(around, from)
    if (outcome.kind !== 'point') return false
    const final = open.map(({ row, allowed }) =>
      clean(allowed, moveOf(program, row, outcome.columns)),
    )
    if (final.includes(undefined)) return false
    if (!best || outcome.objective < best.objective)
      best = {
        columns: outcome.columns,
        moves: final.map((move) => move ?? 0),
        objective: outcome.objective,
      }
    return true
  }
  /** Looks at one node; what it falls into, the more promising last. */
  const lookAt = (node: Node): Node[] => {
    const outcome = relaxed(node)
    if (outcome.kind === 'infeasible') return []
    if (outcome.kind === 'stopped') {
      lost = Math.min(lost, node.bound)
      return []
    }
    const bound = Math.max(node.bound, promised(outcome.bound))
    if (bound >= enough()) return []
    const at = movesAt(outcome.columns)
    const near = touching(program, outcome.cuts, outcome.columns)
    if (node.cuts === cuts) first ??= outcome.cuts
    const choice = farthest(open, at)
    if (choice === undefined) {
      if (settle(outcome.columns, near)) {
        // what the node promised and what it came to differ by the solver's last digits only
        if (bound < enough()) lost = Math.min(lost, bound)
        return []
      }
      const three = apart(open, node.ranges, at)
      if (three.length === 0) lost = Math.min(lost, bound)
      return three.map((ranges) => ({ ranges, bound, cuts: near }))
    }
    return branched(open, node.ranges, at, choice).map((ranges) => ({ ranges, bound, cuts: near }))
  }
  for (const start of starts) {
    const ranges = start.map((move): MoveRange => (move === undefined ? anywhere : [move, move]))
    const stack: Node[] = [{ ranges, bound: -Infinity, cuts }]
    for (let n = 0; n < mostPerStart && !best && !spent(); n++) {
      const node = stack.pop()
      if (!node) break
      stack.push(...lookAt(node))
    }
  }
  lost = Infinity
  const waiting: Node[] = [{ ranges: open.map(() => anywhere), bound: -Infinity, cuts }]
  let further = false
  while (waiting.length > 0 && !spent()) {
    const at = best && !further ? lowest(waiting) : waiting.length - 1
    const [node] = waiting.splice(at, 1)
    further = false
    if (!node || node.bound >= enough()) continue
    const next = lookAt(node)
    further = limits.quick !== undefined && next.length > 0
    waiting.push(...next)
  }
  const left = waiting.reduce((least, { bound }) => Math.min(least, bound), lost)
  const reached = best ? best.objective : limits.cutoff
  const complete = left >= enough()
  return {
    best,
    bound: complete && !best ? Infinity : Math.min(left, reached),
    complete,
    nodes,
    cuts: first ?? cuts,
  }
}

const clean = (allowed: Allowed, move: Micrometres): Micrometres | undefined =>
  isAllowed(allowed, move) ? nearest(allowed, move) : undefined

/** The node that promises most; of equal ones the last, which lies deepest. */
const lowest = (nodes: readonly Node[]): number =>
  nodes.reduce((best, { bound }, i) => (bound <= (nodes[best]?.bound ?? Infinity) ? i : best), 0)
