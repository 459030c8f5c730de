import { dualBound } from '../proof/dualBound'
import type { Optimal, Solver } from '../solver/solver'
import { violatedCuts } from '../program/cuts'
import { programUnit, type Cut, type Program } from '../program/program'
import { stageProgram, type Stage } from '../program/stage'

/** More rounds than any train has needed; reaching it counts as stopped. */
const mostRounds = 60
/** Seconds a single linear program may take. */
export const secondsPerProgram = 20
/** No sensible plan moves anything by more than 1 m; bounds columns that the dual bound needs bounded. */
export const reach = 1e6 / programUnit

export type RoundsOutcome =
  | {
      readonly kind: 'optimal'
      readonly answer: Optimal
      readonly cuts: readonly Cut[]
      /** Lower bound on the stage's objective, from the duals. */
      readonly bound: number
      readonly rounds: number
    }
  | { readonly kind: 'infeasible' }
  | { readonly kind: 'stopped'; readonly why: string }

/**
 * Solves a stage, adds tangents where the answer lies beyond a circle, and solves again, until no
 * circle is passed. Every round relaxes the true problem, so the last dual bound is valid for it.
 */
export function solveRounds(
  program: Program,
  stage: Stage,
  cuts: readonly Cut[],
  solver: Solver,
): RoundsOutcome {
  let current = [...cuts]
  for (let round = 1; round <= mostRounds; round++) {
    const lp = stageProgram(program, stage, current)
    const outcome = solver.solve(lp, secondsPerProgram)
    if (outcome.kind === 'infeasible') return outcome
    if (outcome.kind === 'unbounded')
      return { kind: 'stopped', why: `the program for the ${stage.ask} came back unbounded` }
    if (outcome.kind === 'stopped') return outcome
    const more = violatedCuts(program, current, outcome.columns)
    if (more.length === 0)
      return {
        kind: 'optimal',
        answer: outcome,
        cuts: current,
        bound: dualBound(lp, outcome.duals, reach),
        rounds: round,
      }
    current = [...current, ...more]
  }
  return { kind: 'stopped', why: `the circles were not met within ${mostRounds} rounds` }
}
