import { tol } from '../../mechanics/tolerances'
import type { Solver, WarmStart } from './solver'
import type { Cut, Program } from './program'
import { inShareUnit, leastInUnit, shareUnit, stageInUnit } from './shareUnit'
import { shareWeight, stageOf, type Stage } from './stage'
import { solveRounds, type Answered, type RoundsOptimal, type RoundsStopped } from './rounds'

export interface LeastShare {
  readonly kind: 'optimal'
  /** No allowed move has a smaller worst share. */
  readonly bound: number
  /** The program that gave the bound as it was last solved: its duals say what holds the share there. */
  readonly lowest: RoundsOptimal
  /** An allowed move whose worst share is `bound` but for `tol.settled`. */
  readonly point: RoundsOptimal
  readonly cuts: readonly Cut[]
}

/** Ends rounds of tangents once one of them brings nothing more. */
export function settling(): (round: Answered) => boolean {
  let last = -Infinity
  return ({ answer: { objective } }) => {
    const settled = objective - last <= tol.settled * objective
    last = objective
    return settled
  }
}

/**
 * The smallest worst share of a stage, with a point that reaches it. Minimising the worst alone
 * leaves the other couplings anywhere, and tangents then chase a wandering answer; so once the bound
 * settles, the cheapest move at (just above) that share is asked for. It meets the circles, or shows
 * that the bound must rise.
 */
export function leastShare(
  program: Program,
  stage: Extract<Stage, { ask: 'floor' | 'margin' }>,
  cuts: readonly Cut[],
  solver: Solver,
  warm: WarmStart = {},
): LeastShare | RoundsStopped {
  const unit = shareUnit(program)
  if (unit === 1) return leastAsCounted(program, stage, cuts, solver, warm)
  const asked = stageInUnit(stage, unit)
  const least = leastAsCounted(inShareUnit(program, unit), asked, cuts, solver, warm)
  return least.kind === 'stopped' ? least : leastInUnit(least, unit)
}

function leastAsCounted(
  program: Program,
  stage: Extract<Stage, { ask: 'floor' | 'margin' }>,
  cuts: readonly Cut[],
  solver: Solver,
  warm: WarmStart = {},
): LeastShare | RoundsStopped {
  let current = cuts
  const first: WarmStart = stage.ask === 'margin' ? warm : {}
  let next = warm
  for (let turn = 0; turn < tol.mostTurns; turn++) {
    const lowest = solveRounds(program, stageOf(program, stage), current, solver, settling(), first)
    if (lowest.kind === 'stopped') return lowest
    if (lowest.kind === 'infeasible')
      return { kind: 'stopped', why: `the program for the ${stage.ask} came back infeasible` }
    // rounded down, so that it stays a bound
    const bound = Math.max(0, (lowest.bound / shareWeight) * (1 - 2 ** -52))
    if (lowest.met) return { kind: 'optimal', bound, lowest, point: lowest, cuts: lowest.cuts }
    const share = bound * (1 + tol.settled) + tol.settledShare
    const point = solveRounds(
      program,
      stageOf(program, { ask: 'cost', share }),
      lowest.cuts,
      solver,
      undefined,
      next,
    )
    const affordable = stage.ask === 'floor' ? Infinity : stage.cost * (1 + tol.settled)
    if (point.kind === 'optimal' && point.answer.objective <= affordable)
      return { kind: 'optimal', bound, lowest, point, cuts: point.cuts }
    if (point.kind === 'stopped') return point
    // where a program has no answer the solver stands at no good place to go on from
    if (point.kind === 'infeasible') next = {}
    current = point.kind === 'optimal' ? point.cuts : lowest.cuts
  }
  return { kind: 'stopped', why: `bound and point did not meet in ${tol.mostTurns} turns` }
}
