import { tol } from '../../../mechanics/tolerances'
import { firstCuts } from '../../lp/cuts'
import type { Cut, Program } from '../../lp/program'
import { shareWeight, stageOf } from '../../lp/stage'
import type { Solver } from '../../lp/solver'
import { leastShare } from '../../lp/leastShare'
import { solveRounds, type Answered, type RoundsStopped } from '../../lp/rounds'
import { cutsIn } from './subproblem'
import { shareWhenPulledIn } from './pull'

/** Whether some move keeps every coupling of a program within a share. */
export type ShareFeasibility =
  | { readonly kind: 'met'; readonly cuts: readonly Cut[] }
  | {
      readonly kind: 'missed'
      /** No move reaches less; not yet the smallest that can be said. */
      readonly atLeast: number
      /** The answer that shows it, with the tangents of its program. */
      readonly shown: Pick<Answered, 'answer' | 'asked'>
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
export function shareFeasibility(
  program: Program,
  share: number,
  cuts: readonly Cut[],
  solver: Solver,
): ShareFeasibility {
  const enough = share + tol.overFloor
  const decided = ({ answer, asked, bound }: Answered): ShareFeasibility | undefined => {
    if (answer.objective > enough * shareWeight) {
      const atLeast = bound() / shareWeight
      return atLeast > enough
        ? { kind: 'missed', atLeast, shown: { answer, asked }, cuts: asked }
        : undefined
    }
    if (shareWhenPulledIn(program, answer.columns) > enough) return undefined
    return { kind: 'met', cuts: asked }
  }
  let current: readonly Cut[] = startingCuts(program, cuts)
  for (let turn = 0; turn < mostTurns; turn++) {
    let rounds = 0
    let found: ShareFeasibility | undefined
    const lowest = solveRounds(
      program,
      stageOf(program, { ask: 'floor' }),
      current,
      solver,
      (round) => {
        found = decided(round)
        return found !== undefined || ++rounds >= tol.mostShareRounds
      },
    )
    if (lowest.kind === 'stopped') return lowest
    if (lowest.kind === 'infeasible') return stopped('the floor is infeasible')
    found ??= decided({ ...lowest, bound: () => lowest.bound })
    if (found) return found
    current = lowest.cuts
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
