import { tol } from '../../../mechanics/tolerances'
import { dualBound } from '../../proof/dualBound'
import { firstCuts, violatedCuts } from '../../lp/cuts'
import type { Cut, Program } from '../../lp/program'
import { shareWeight, stageOf, stageProgram } from '../../lp/stage'
import type { Optimal, Solver } from '../../lp/solver'
import { leastShare } from '../../lp/leastShare'
import { reach, solveRounds, type RoundsStopped } from '../../lp/rounds'
import { cutsIn } from './subproblem'
import { shareWhenPulledIn } from './pull'

/** Whether some move keeps every coupling of a program within a share. */
export type Reach =
  | { readonly kind: 'met'; readonly cuts: readonly Cut[] }
  | {
      readonly kind: 'missed'
      /** No move reaches less; not yet the smallest that can be said. */
      readonly atLeast: number
      /** The answer that shows it, of the program with these tangents. */
      readonly shown: Optimal
      readonly cuts: readonly Cut[]
    }
  | RoundsStopped

/** Turns of that before giving up. */
const mostTurns = 10

/**
 * Asks for the smallest worst share, a program that always has an answer, and stops as soon as its
 * bound is over the share or a move within it is found. Nothing is believed infeasible because a
 * solver says so.
 */
export function reachOf(
  program: Program,
  share: number,
  cuts: readonly Cut[],
  solver: Solver,
): Reach {
  const enough = share + tol.share
  let current = startingCuts(program, cuts)
  for (let turn = 0; turn < mostTurns; turn++) {
    for (let round = 0; round < tol.mostShareRounds; round++) {
      const lp = stageProgram(program, { ask: 'floor' }, current)
      const outcome = solver.solve(lp, tol.seconds)
      if (outcome.kind !== 'optimal')
        return stopped(outcome.kind === 'stopped' ? outcome.why : `the floor is ${outcome.kind}`)
      if (outcome.objective > enough * shareWeight) {
        const atLeast = dualBound(lp, outcome.duals, reach) / shareWeight
        if (atLeast > enough) return { kind: 'missed', atLeast, shown: outcome, cuts: current }
      } else if (shareWhenPulledIn(program, outcome.columns) <= enough)
        return { kind: 'met', cuts: current }
      const more = violatedCuts(program, current, outcome.columns)
      if (more.length === 0) break
      current = [...current, ...more]
    }
    const cost = stageOf(program, { ask: 'cost', share: enough })
    const point = solveRounds(program, cost, current, solver)
    if (point.kind === 'optimal') return { kind: 'met', cuts: point.cuts }
    if (point.kind === 'stopped') return point
  }
  return stopped('bound and point did not meet')
}

const stopped = (why: string): RoundsStopped => ({ kind: 'stopped', why })

/** The smallest worst share of a program, or undefined where its solver stopped. */
export function floorOf(
  program: Program,
  cuts: readonly Cut[],
  solver: Solver,
): number | undefined {
  const least = leastShare(program, { ask: 'floor' }, startingCuts(program, cuts), solver)
  return least.kind === 'optimal' ? least.bound : undefined
}

/** Tangents that are known already, and the first ring where a circle has none yet. */
export function startingCuts(program: Program, cuts: readonly Cut[]): Cut[] {
  const known = cutsIn(program, cuts)
  const cut = new Set(known.map(({ circle }) => circle))
  return [...known, ...firstCuts(program).filter(({ circle }) => !cut.has(circle))]
}
