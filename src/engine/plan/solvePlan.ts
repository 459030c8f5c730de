import type { Micrometres } from '../units/units'
import type { Train } from '../train/model'
import { motionNames, noMotion, type Motion } from '../motion/motion'
import type { Solver } from '../solver/solver'
import { firstCuts } from '../program/cuts'
import { programUnit, type Cut, type Program } from '../program/program'
import { stageOf } from '../program/stage'
import { leastShare } from './leastShare'
import { solveRounds, type RoundsOptimal } from './rounds'

/**
 * Room in every comparison with the share asked for, as a part of the limit: plans may pass a
 * tolerance by this much, so a train that stands there already needs no move.
 */
export const shareSlack = 1e-6
/** Plans within this part of the least cost count as equal; half of what the contract allows. */
const equalCost = 5e-7

export interface CostAnswer extends RoundsOptimal {
  /** The share that the cost was minimised under. */
  readonly share: number
}

export type Solved =
  | { readonly status: 'in-tolerance'; readonly floor: number | undefined }
  | { readonly status: 'impossible'; readonly floor: number; readonly cuts: readonly Cut[] }
  | {
      readonly status: 'planned'
      readonly floor: number
      readonly motions: readonly Motion[]
      /** The least cost as its program gave it, with its duals and tangents. */
      readonly least: CostAnswer
    }
  | { readonly status: 'stopped'; readonly floor: number | undefined; readonly why: string }

/**
 * Asks the program for the floor, for the least cost within the share, and among plans of that cost
 * for the smallest worst share. Standing still is judged before any program is solved.
 */
export function solvePlan(
  train: Train,
  program: Program,
  standing: number,
  solver: Solver,
): Solved {
  const { share } = train.plan
  const lowest = leastShare(program, { ask: 'floor' }, firstCuts(program), solver)
  const floor = lowest.kind === 'optimal' ? Math.min(lowest.bound, standing) : undefined
  if (standing <= share + shareSlack) return { status: 'in-tolerance', floor }
  if (lowest.kind === 'stopped' || floor === undefined)
    return stopped(lowest, undefined, 'the floor')
  if (floor > share + shareSlack) return { status: 'impossible', floor, cuts: lowest.cuts }
  const within = Math.max(share, floor * (1 + 1e-7) + 1e-9)
  const least = solveRounds(
    program,
    stageOf(program, { ask: 'cost', share: within }),
    lowest.cuts,
    solver,
  )
  if (least.kind !== 'optimal') return stopped(least, floor, 'the least cost')
  const cost = least.answer.objective * (1 + equalCost)
  const margin = leastShare(program, { ask: 'margin', share: within, cost }, least.cuts, solver)
  if (margin.kind === 'stopped') return stopped(margin, floor, 'the best share at that cost')
  return {
    status: 'planned',
    floor,
    motions: motionsOf(train, program, margin.point.answer.columns),
    least: { ...least, share: within },
  }
}

function stopped(
  outcome: { kind: string; why?: string },
  floor: number | undefined,
  what: string,
): Extract<Solved, { status: 'stopped' }> {
  const why = outcome.why ?? `its program came back ${outcome.kind}, which cannot be`
  return { status: 'stopped', floor, why: `${what} was not found: ${why}` }
}

/** Motions below this are the solver's last digits and no movement (um at the outermost foot). */
const nothing: Micrometres = 1e-7

/** Reads the motions of every body back from the program's columns. */
export function motionsOf(
  train: Train,
  program: Program,
  values: readonly number[],
): readonly Motion[] {
  const motions = train.bodies.map(() => ({ ...noMotion }))
  program.columns.forEach(({ meaning }, column) => {
    const value = values[column] ?? 0
    if (meaning.part !== 'motion' || Math.abs(value) * programUnit < nothing) return
    const motion: Record<(typeof motionNames)[number], number> | undefined = motions[meaning.body]
    if (motion) motion[meaning.motion] = value * meaning.scale
  })
  return motions
}
