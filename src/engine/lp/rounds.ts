import { tol } from '../../mechanics/tolerances'
import { dualBound } from '../proof/dualBound'
import type { LinearProgram, Optimal, Solver, WarmStart } from './solver'
import { isSound, soundnessOf } from './soundness'
import { violatedCuts } from './cuts'
import { once } from '../../mechanics/once'
import { reach, type Cut, type Program } from './program'

export type RoundsOutcome = RoundsOptimal | { readonly kind: 'infeasible' } | RoundsStopped

export interface RoundsStopped {
  readonly kind: 'stopped'
  readonly why: string
}

/** The answer of a stage: program units of cost, or a share of tolerance, by what the stage asks. */
export interface RoundsOptimal {
  readonly kind: 'optimal'
  readonly answer: Optimal
  /** The tangents of the program that it answers ... */
  readonly asked: readonly Cut[]
  /** ... and those that it passes too. */
  readonly cuts: readonly Cut[]
  /** Lower bound on the stage's objective, from the duals. */
  readonly bound: number
  /** True when the answer passes no circle. */
  readonly met: boolean
}

/** What a round came to, before it is known whether it passes a circle. */
export interface Answered {
  readonly answer: Optimal
  readonly asked: readonly Cut[]
  /** Lower bound on the stage's objective, from the duals. */
  readonly bound: () => number
}

/**
 * Solves a program, adds tangents where the answer lies beyond a circle, and solves again, until no
 * circle is passed. Every round relaxes the true problem, so the last dual bound is valid for it.
 * @param written the program's linear form with the tangents so far
 * @param warm of the programs that these follow
 * @param settled stops earlier: shown what each round came to, true ends the rounds with what there is
 */
export function solveRounds(
  program: Program,
  written: (cuts: readonly Cut[]) => LinearProgram,
  cuts: readonly Cut[],
  solver: Solver,
  settled: (round: Answered) => boolean = () => false,
  warm: WarmStart = {},
): RoundsOutcome {
  let current = [...cuts]
  for (let round = 1; round <= tol.mostRounds; round++) {
    const lp = written(current)
    const outcome = solver.solve(lp, tol.seconds, warm)
    if (outcome.kind === 'infeasible' || outcome.kind === 'stopped') return outcome
    if (outcome.kind === 'unbounded')
      return { kind: 'stopped', why: 'the program came back unbounded' }
    // Whatever stands behind the port: a point and duals that do not prove each other are no answer.
    if (!isSound(soundnessOf(lp, outcome)))
      return { kind: 'stopped', why: 'the answer of the solver did not stand up to checking' }
    const asked = current
    const bound = once(() => dualBound(lp, outcome.duals, reach))
    const more = violatedCuts(program, asked, outcome.columns)
    if (more.length === 0 || settled({ answer: outcome, asked, bound }))
      return {
        kind: 'optimal',
        answer: outcome,
        asked,
        cuts: [...asked, ...more],
        get bound() {
          return bound()
        },
        met: more.length === 0,
      }
    current = [...current, ...more]
  }
  return { kind: 'stopped', why: `the circles were not met within ${tol.mostRounds} rounds` }
}
