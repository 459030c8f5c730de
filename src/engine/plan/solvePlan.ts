import { tol } from '../../mechanics/tolerances'
import type { Train } from '../../mechanics/train'
import { Budget } from '../lp/budget'
import { motionNames, noMotion, type Motion } from '../../mechanics/motion'
import type { Solver } from '../lp/solver'
import { Partition, type Part } from '../lp/parts'
import { programUnit, type Cut, type Program } from '../lp/program'
import type { Claim } from '../proof/claims'
import { floorClaims } from './limitClaims'
import { PartSolver, type CostAnswer, type PartPlan } from './partSolver'
import { solveParts } from './solveParts'
import { floorCuts, wholeAnswer } from './wholeAnswer'

/** Said where a plan is not found within the work allowed: nothing is known of whether there is one. */
const outOfWork = (work: number): string => {
  const allowed = work === 1 ? 'the usual work' : `${work} times the usual work`
  const more = 10 * Math.max(1, work)
  return `no plan was found within ${allowed}, which says nothing of whether there is one; on the command line --work ${more} allows ${more} times the usual work`
}

export type { CostAnswer } from './partSolver'

/** A part of the train with its own least cost. */
export interface LeastOfPart {
  readonly program: Program
  readonly least: CostAnswer
}

export type Solved =
  | { readonly status: 'in-tolerance'; readonly floor: number | undefined }
  | {
      readonly status: 'impossible'
      readonly floor: number
      readonly cuts: readonly Cut[]
      /** The limits that the floor leans on. */
      readonly claims: readonly Claim[]
    }
  | {
      readonly status: 'planned'
      readonly floor: number
      readonly motions: readonly Motion[]
      /** The least cost as its program gave it, with its duals and tangents. */
      readonly least: CostAnswer
      /** The same, part by part; only parts that move. */
      readonly parts: readonly LeastOfPart[]
    }
  | {
      readonly status: 'stopped'
      readonly floor: number | undefined
      readonly why: string
      readonly outOfWork?: true
    }

/**
 * Asks the program for the floor, for the least cost within the share, and among plans of that cost
 * for the smallest worst share; part by part where bodies that stay cut the train apart. Standing
 * still is judged before any program is solved.
 * @param work how many times the usual work it may take
 */
export function solvePlan(
  train: Train,
  program: Program,
  standing: number,
  solver: Solver,
  work = 1,
): Solved {
  const partition = new Partition(program)
  const budget = new Budget(solver, work * tol.planWork)
  const parts = new PartSolver(partition, budget.solver)
  const solved = budget.attempt(() => solveParts(partition, parts, train.plan.share, standing))
  if (!solved) {
    // what its parts reach at best may be known, and is then no less true
    const known = partition.split().map((group) => parts.knownFloor(group)?.bound)
    const floor = known.every((bound) => bound !== undefined) ? Math.max(...known) : undefined
    return { status: 'stopped', floor, why: outOfWork(work), outOfWork: true }
  }
  switch (solved.status) {
    case 'in-tolerance':
    case 'stopped':
      return solved
    case 'impossible': {
      const { status, floor, groups } = solved
      const cuts = floorCuts(partition, parts, groups)
      return { status, floor, cuts, claims: floorClaims(partition, parts, groups) }
    }
    case 'planned': {
      const { status, floor, share } = solved
      const plans = solved.plans.map(({ group, plan }) => ({ part: parts.part(group), plan }))
      return {
        status,
        floor,
        motions: motionsOf(train, plans),
        least: wholeAnswer(program, share, plans),
        parts: plans.flatMap(({ part, plan: { least } }) =>
          least ? [{ program: part.program, least }] : [],
        ),
      }
    }
  }
}

/** Reads the motions of every body back from the columns of the parts. */
export function motionsOf(
  train: Train,
  plans: readonly { readonly part: Part; readonly plan: PartPlan }[],
): readonly Motion[] {
  const motions = train.bodies.map(() => ({ ...noMotion }))
  for (const { part, plan } of plans)
    part.program.columns.forEach(({ meaning }, column) => {
      const value = plan.values?.[column] ?? 0
      if (meaning.part !== 'motion' || Math.abs(value) * programUnit < tol.noMotion) return
      const motion: Record<(typeof motionNames)[number], number> | undefined = motions[meaning.body]
      if (motion) motion[meaning.motion] = value * meaning.scale
    })
  return motions
}
