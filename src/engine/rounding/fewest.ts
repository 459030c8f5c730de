import { tol } from '../../mechanics/tolerances'
import { leastShare } from '../lp/leastShare'
import type { Cut } from '../lp/program'
import type { Meter } from './meter'
import { isAllowed, nearest, nothingElse, type Allowed } from './allowed'
import { bounded, moveOf, type Open } from './branches'
import { allowance, type ChoicePart } from './chosen'
import { leastCost } from './question'
import { search, type Found } from './search'

/** Of roundings that cost the same, one that changes fewer feet: each change is tried without. */
export function fewestChanged(
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
export function widest(
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
