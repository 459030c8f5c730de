import type { Micrometres } from '../../mechanics/units'
import { boundsTogether } from '../proof/exactSum'
import { firstCuts } from '../lp/cuts'
import { programUnit, type Cut, type Program } from '../lp/program'
import type { Stage } from '../lp/stage'
import type { PlanRun } from './planRun'

/** The least-cost program of a train as it was last solved, for other solvers to judge. */
export type FinalProgram =
  | {
      readonly status: 'planned' | 'in-tolerance' | 'impossible'
      readonly program: Program
      readonly stage: Extract<Stage, { ask: 'cost' }>
      /** The tangents of the last round; the first ring where nothing had to be solved. */
      readonly cuts: readonly Cut[]
      /** Its optimum (um), which is the bound of the proof; undefined where there is no solution. */
      readonly bound: Micrometres | undefined
    }
  | { readonly status: 'stopped'; readonly why: string }

/**
 * Plans a train and keeps the program instead of the plan. Its optimum is the bound of the proof; 0
 * for a train within tolerance; for an impossible one it has no solution.
 */
export function finalProgram(run: PlanRun): FinalProgram {
  const program = run.program()
  const solved = run.solved()
  const { share } = run.train.plan
  switch (solved.status) {
    case 'stopped':
      return { status: 'stopped', why: solved.why }
    case 'planned': {
      const { cuts, share: within, bound } = solved.least
      return {
        status: 'planned',
        program,
        stage: { ask: 'cost', share: within },
        cuts,
        bound: boundsTogether([bound], programUnit),
      }
    }
    case 'impossible':
      return {
        status: 'impossible',
        program,
        stage: { ask: 'cost', share },
        cuts: solved.cuts,
        bound: undefined,
      }
    case 'in-tolerance': {
      const within = Math.max(share, run.standingShare())
      const cuts = firstCuts(program)
      const stage = { ask: 'cost', share: within } as const
      return { status: 'in-tolerance', program, stage, cuts, bound: 0 }
    }
  }
}
