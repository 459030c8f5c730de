import type { Micrometres } from '../../mechanics/units'
import type { Cut, Program } from '../lp/program'
import { anywhere, nearest, type MoveRange } from './allowed'
import { bounded, moveOf, touching, type Open } from './branches'
import type { Question } from './question'

/** Part of the moves still open that are settled after each program. */
const atOnce = 1 / 3

/** Moves that a search may start from; those that are left out stay open. */
export type Start = readonly (Micrometres | undefined)[]

/**
 * Straight down: after each program the moves that lie nearest to ones that can be made are settled
 * there, a third at once, until all are or nothing is left. It proves nothing; a search that would
 * run out of work starts from where it came to.
 * @returns what was settled, the most of it first
 */
export function dive(
  program: Program,
  open: readonly Open[],
  ask: Question,
  cuts: readonly Cut[],
): Start[] {
  const ranges: MoveRange[] = open.map(() => anywhere)
  const settled: (Micrometres | undefined)[] = open.map(() => undefined)
  const starts: Start[] = []
  let from = cuts
  for (;;) {
    const outcome = ask(bounded(program, open, ranges), from)
    if (outcome.kind !== 'point') return starts.reverse()
    starts.push([...settled])
    from = touching(program, outcome.cuts, outcome.columns)
    const at = open.map(({ row }) => moveOf(program, row, outcome.columns))
    const goal = open.map(({ allowed }, i) => nearest(allowed, at[i] ?? 0))
    const off = (i: number) => Math.abs((goal[i] ?? 0) - (at[i] ?? 0))
    const left = open
      .flatMap((_, i) => (ranges[i] === anywhere ? [i] : []))
      .sort((a, b) => off(a) - off(b) || a - b)
    if (left.length === 0) return starts.reverse()
    for (const i of left.slice(0, Math.ceil(left.length * atOnce))) {
      const move = goal[i] ?? 0
      const around = open[i]?.allowed.around(move) ?? anywhere
      // a slide that may be anything from here on is kept on its side, no more
      const [low, high] = around
      ranges[i] = [low, high]
      settled[i] = low === high ? move : undefined
    }
  }
}
