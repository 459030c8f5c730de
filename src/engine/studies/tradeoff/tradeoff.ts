import { tol } from '../../../mechanics/tolerances'
import { tidy } from '../../../language/tidy'
import type { Micrometres } from '../../../mechanics/units'
import type { Train } from '../../../mechanics/train'
import { sharesOf, type CouplingResult } from '../../../mechanics/misalignment/shares'
import { choiceNow, type HoldChoice } from '../holds/choice'
import { HoldSolver } from '../holds/holdSolver'
import type { FloorSetting } from '../../infeasible/floor/floorReason'
import type { PlanFigures } from '../../plan/answer'
import { planSolved } from '../../plan/planSolved'
import { provenBound } from '../../plan/provenBound'
import { motionsOf } from '../../plan/solvePlan'
import { solveParts } from '../../plan/solveParts'
import { programUnit } from '../../lp/program'
import type { Solver } from '../../lp/solver'
import { heightAt, lowerHull } from './convexCurve'
import { cutsFor, partCurve, type PartPoint } from './partCurve'

/**
 * Least cost against the share of tolerance used, from the floor to where nothing moves. With a guard the share is that
 * asked for: what is kept free comes out of it, and a coupling itself uses less.
 */
export interface Tradeoff {
  /** Corners in order of share; straight between them. */
  readonly points: readonly { readonly share: number; readonly cost: Micrometres }[]
  readonly floor: number
  /** Worst share as found, what is kept free counted: from here on nothing moves, unless teeth then run too straight. */
  readonly standing: number
  /** From here on the first error loses the plan. */
  readonly noRoom: number
}

/**
 * The trade-off of one choice of held bodies, kept so that a point dragged along it is followed: a plan
 * at a share starts from the tangents of the corners on both sides and needs a few programs.
 */
export class TradeoffPlanner {
  readonly curve: Tradeoff
  private readonly holds: HoldSolver
  private readonly choice: HoldChoice
  private readonly parts: ReadonlyMap<string, readonly PartPoint[]>
  private readonly standing: readonly CouplingResult[]
  private readonly setting: FloorSetting

  private constructor(
    holds: HoldSolver,
    setting: FloorSetting,
    choice: HoldChoice,
    parts: ReadonlyMap<string, readonly PartPoint[]>,
    curve: Tradeoff,
  ) {
    this.holds = holds
    this.setting = setting
    this.choice = choice
    this.parts = parts
    this.curve = curve
    this.standing = sharesOf(holds.train, holds.found)
  }

  /** Works the curve out in steps, about a program each, so that a caller can stop asking. */
  static *steps(
    holds: HoldSolver,
    choice: HoldChoice = choiceNow(holds.train),
  ): Generator<void, TradeoffPlanner | undefined> {
    const setting = holds.setting(choice)
    const { partition, parts, standing } = setting
    const free = holds.free(choice)
    const { floor } = solveParts(partition, parts, Infinity, standing, free)
    if (floor === undefined) return undefined
    const start = floor * (1 + tol.settled) + tol.settledShare
    const curves = new Map<string, readonly PartPoint[]>()
    for (const group of partition.split(free)) {
      if (parts.standing(group) <= start + tol.share) continue
      const curve = yield* partCurve(setting, group, start)
      if (!curve) return undefined
      curves.set(group.key, lowerHull(curve))
    }
    const shares = new Set([start])
    if (Number.isFinite(standing)) shares.add(Math.max(start, standing))
    for (const curve of curves.values()) for (const { share } of curve) shares.add(share)
    const end = Math.max(...shares)
    const costAt = (share: number) =>
      [...curves.values()].reduce((sum, curve) => sum + heightAt(curve, share), 0) * programUnit
    const points = apartFrom(shares, end).map((share) => ({
      share: tidy(share),
      cost: share < standing ? tidy(costAt(share)) : 0,
    }))
    return new TradeoffPlanner(holds, setting, choice, curves, {
      points,
      floor: tidy(floor),
      standing: tidy(holds.asFoundShare(choice)),
      noRoom: tol.noRoomFrom,
    })
  }

  /** The plan at a share of tolerance, as a run gives it but for prices. */
  planAt(share: number): PlanFigures {
    const { holds, choice } = this
    const { partition, parts, standing } = this.setting
    const held = holds.heldBy(choice)
    const train: Train = { ...held, plan: { ...held.plan, share } }
    const solved = solveParts(
      partition,
      parts,
      share,
      standing,
      holds.free(choice),
      (group, within) => {
        const curve = this.parts.get(group.key) ?? []
        const cuts = cutsFor(parts.part(group).program, curve, within)
        return parts.planFrom(group, within, cuts.length > 0 ? cuts : undefined)
      },
    )
    if (solved.status !== 'planned') return planSolved(train, holds.found, this.standing, solved)
    const plans = solved.plans.map(({ group, plan }) => ({ part: parts.part(group), plan }))
    const lines = holds.found.map(({ line }) => line)
    const moving = plans.flatMap(({ part, plan: { least } }) =>
      least ? [{ program: part.program, least }] : [],
    )
    const bound = provenBound(train, lines, solved.share, moving)
    const { status, floor } = solved
    const planned = { status, floor, motions: motionsOf(train, plans), ...bound }
    return planSolved(train, holds.found, this.standing, planned)
  }
}

/** Shares in order up to the last one, those left out that only the last digits tell from the next. */
const apartFrom = (shares: Iterable<number>, last: number): number[] =>
  [...[...shares].filter((share) => share < last), last]
    .sort((a, b) => a - b)
    .filter((share, i, all) => i === all.length - 1 || (all[i + 1] ?? 0) - share > tol.dust)

/** The curve alone, in the same steps. */
export function* tradeoffSteps(
  holds: HoldSolver,
  choice: HoldChoice = choiceNow(holds.train),
): Generator<void, Tradeoff | undefined> {
  const planner = yield* TradeoffPlanner.steps(holds, choice)
  return planner?.curve
}

/**
 * The trade-off of a train with what it holds now, and the plans along it.
 * @returns undefined when the solver stopped
 */
export function tradeoffPlanner(train: Train, solver: Solver): TradeoffPlanner | undefined {
  const steps = TradeoffPlanner.steps(new HoldSolver(train, solver, 'sides'))
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
  }
}
