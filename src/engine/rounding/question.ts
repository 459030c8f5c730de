import { tol } from '../../mechanics/tolerances'
import { settling } from '../lp/leastShare'
import { solveRounds } from '../lp/rounds'
import type { Cut, Program } from '../lp/program'
import { shareWeight, stageOf } from '../lp/stage'
import type { Solver } from '../lp/solver'
import { sharpest } from './sharpest'

/** What a program comes to while only some of its moves are ones that people can make. */
export type Relaxed =
  | {
      readonly kind: 'point'
      /** No point of the program is better. */
      readonly bound: number
      readonly objective: number
      readonly columns: readonly number[]
      readonly cuts: readonly Cut[]
    }
  | { readonly kind: 'infeasible' }
  | { readonly kind: 'stopped'; readonly why: string }

/** Asks one question of a program, starting from tangents. */
export type Question = (program: Program, cuts: readonly Cut[]) => Relaxed

/** The least cost within a share of every tolerance (program units). */
export const leastCost =
  (solver: Solver, share: number): Question =>
  (program, cuts) => {
    const stage = stageOf(program, { ask: 'cost', share })
    const outcome = solveRounds(program, stage, cuts, solver)
    if (outcome.kind !== 'optimal') return outcome
    const { bound, answer } = outcome
    return {
      kind: 'point',
      bound: sharpest(stage(outcome.cuts), answer.duals, bound),
      objective: answer.objective,
      columns: answer.columns,
      cuts: outcome.cuts,
    }
  }

/**
 * The same by one program: its answer may pass circles, whose tangents it brings with it, and its bound holds
 * all the same. Branches far from the best are cut off by it at a part of the work.
 */
export const leastCostAtOnce =
  (solver: Solver, share: number): Question =>
  (program, cuts) => {
    const stage = stageOf(program, { ask: 'cost', share })
    const outcome = solveRounds(program, stage, cuts, solver, () => true)
    if (outcome.kind !== 'optimal') return outcome
    const { answer } = outcome
    return {
      kind: 'point',
      bound: sharpest(stage(cuts), answer.duals, outcome.bound),
      objective: answer.objective,
      columns: answer.columns,
      cuts: outcome.cuts,
    }
  }

/** The smallest worst share; a point that reaches it is the cheapest one there. */
export const smallestShare =
  (solver: Solver): Question =>
  (program, cuts) => {
    let current = cuts
    for (let turn = 0; turn < tol.mostTurns; turn++) {
      const stage = stageOf(program, { ask: 'floor' })
      const lowest = solveRounds(program, stage, current, solver, settling())
      if (lowest.kind !== 'optimal') return lowest
      const sharp = sharpest(stage(lowest.cuts), lowest.answer.duals, lowest.bound)
      const bound = Math.max(0, sharp / shareWeight)
      const share = bound * (1 + tol.settled) + tol.settled
      const point = solveRounds(
        program,
        stageOf(program, { ask: 'cost', share }),
        lowest.cuts,
        solver,
      )
      if (point.kind === 'optimal') {
        const { columns } = point.answer
        return { kind: 'point', bound, objective: share, columns, cuts: point.cuts }
      }
      if (point.kind === 'stopped') return point
      current = lowest.cuts
    }
    return { kind: 'stopped', why: `bound and point did not meet in ${tol.mostTurns} turns` }
  }
