import { tol } from '../../mechanics/tolerances'
import type { Program } from '../lp/program'
import type { MotionGroup, Partition } from '../lp/parts'
import { standingShare } from '../lp/standing'
import type { PartPlan, PartSolver, PartStopped } from './partSolver'
import { slackTogether } from './slackTogether'

/** What a choice of free motions comes to, part by part. */
export type SolvedParts =
  | { readonly status: 'in-tolerance'; readonly floor: number | undefined }
  | { readonly status: 'stopped'; readonly floor: number | undefined; readonly why: string }
  | {
      readonly status: 'impossible'
      readonly floor: number
      readonly groups: readonly MotionGroup[]
    }
  | {
      readonly status: 'planned'
      readonly floor: number
      /** The share that the cost was minimised under: the one asked for, or the floor just above it. */
      readonly share: number
      readonly plans: readonly { readonly group: MotionGroup; readonly plan: PartPlan }[]
    }

/** Solves one group within a share. */
export type PlanGroup = (group: MotionGroup, share: number) => PartPlan | PartStopped

/**
 * Solves a choice of free motions by its parts. The floor is the largest of theirs and of the
 * couplings that nothing moves; the least cost is the sum of theirs.
 * @param standing worst share as found: at or below `share` nothing needs to move
 */
export function solveParts(
  partition: Partition,
  solver: PartSolver,
  share: number,
  standing: number,
  free: (column: number) => boolean = () => true,
  planGroup: PlanGroup = (group, within) => solver.plan(group, within),
): SolvedParts {
  const groups = partition.split(free)
  const lowest = floorOf(partition, solver, groups, free)
  const floor = lowest.floor === undefined ? undefined : Math.min(lowest.floor, standing)
  if (standing <= share + tol.overFloor) return { status: 'in-tolerance', floor }
  if (floor === undefined) return { status: 'stopped', floor, why: lowest.why }
  if (floor > share + tol.overFloor) return { status: 'impossible', floor, groups }
  const within = Math.max(share, floor * (1 + tol.settled) + tol.settledShare)
  const plans: { group: MotionGroup; plan: PartPlan }[] = []
  for (const group of groups) {
    const plan = planGroup(group, within)
    if (plan.kind === 'stopped') return { status: 'stopped', floor, why: plan.why }
    plans.push({ group, plan })
  }
  const still = stillShare(partition, free)
  return {
    status: 'planned',
    floor,
    share: within,
    plans: slackTogether(plans, solver, within, still),
  }
}

/** A part whose floor cannot be the largest, since it stands below that, is not asked for its own. */
function floorOf(
  partition: Partition,
  solver: PartSolver,
  groups: readonly MotionGroup[],
  free: (column: number) => boolean,
): { floor: number; why: '' } | { floor: undefined; why: string } {
  let floor = stillShare(partition, free)
  const worstFirst = groups
    .map((group) => ({ group, standing: solver.standing(group) }))
    .sort((a, b) => b.standing - a.standing)
  for (const { group, standing } of worstFirst) {
    if (standing <= floor) break
    const lowest = solver.floor(group)
    if (lowest.kind === 'stopped') return { floor: undefined, why: lowest.why }
    floor = Math.max(floor, lowest.bound)
  }
  return { floor, why: '' }
}

/** Worst share of the couplings between bodies that stay. */
function stillShare(partition: Partition, free: (column: number) => boolean): number {
  const { rows, circles } = partition.still(free)
  const { program }: { program: Program } = partition
  return standingShare(
    rows,
    circles.flatMap((c) => program.circles[c] ?? []),
  )
}
