import { tol } from '../../../mechanics/tolerances'
import type { FloorSetting } from '../../infeasible/floor/floorReason'
import { pressingRows } from '../../lp/duals'
import { solveRounds } from '../../lp/rounds'
import { affineValue } from '../../lp/affine'
import { tangentRow, farthestReach } from '../../lp/cuts'
import type { MotionGroup } from '../../lp/parts'
import { reach, shareColumn, type Cut, type Program } from '../../lp/program'
import { stageOf, stageRows } from '../../lp/stage'
import type { Optimal } from '../../lp/solver'
import { convexCurve, type CurvePoint } from './convexCurve'

/**
 * A point of a part's curve, its cost in program units, with the program's answer there (values of its columns)
 * and the tangents that it leans on.
 */
export interface PartPoint extends CurvePoint {
  readonly values: readonly number[]
  readonly active: readonly Cut[]
}

/**
 * Circles may be passed by this many times their slack, which is what a plan may pass them by: a curve
 * is drawn, not proven, and this saves rounds.
 */
const looser = 100

/**
 * The least cost of a part against the share, from `start` to where it stands; where it may not stand, since teeth would
 * run too straight, to the whole tolerance, or a little past the floor where that is more.
 * @returns its corners; undefined when the solver stopped
 */
export function* partCurve(
  setting: Pick<FloorSetting, 'parts' | 'solver'>,
  group: MotionGroup,
  start: number,
): Generator<void, PartPoint[] | undefined> {
  const { parts, solver } = setting
  const exact = parts.part(group).program
  const lowest = parts.floor(group)
  if (lowest.kind === 'stopped') return undefined
  const program: Program = {
    ...exact,
    circles: exact.circles.map((circle) => ({ ...circle, slack: circle.slack * looser })),
  }
  const solved: PartPoint[] = []
  const ask = (share: number): PartPoint | undefined => {
    const known = cutsFor(program, solved, share)
    const cuts = known.length > 0 ? known : lowest.cuts
    const stage = stageOf(program, { ask: 'cost', share })
    const outcome = solveRounds(program, stage, cuts, solver)
    if (outcome.kind !== 'optimal') return undefined
    const { answer } = outcome
    const active = pressingRows(program, outcome, { least: tol.noCurvePrice }).flatMap(
      ({ cut }) => cut ?? [],
    )
    const point = {
      share,
      cost: Math.max(0, answer.objective),
      slope: Math.min(0, slopeOf(program, outcome.asked, answer)),
      bent: active.length > 0,
      values: answer.columns,
      active,
    }
    solved.push(point)
    return point
  }
  const first = ask(start) ?? ask(start * (1 + tol.share) + tol.secondTry)
  if (!first) return undefined
  yield
  const standing = parts.standing(group)
  const last: PartPoint | undefined = Number.isFinite(standing)
    ? {
        share: standing,
        cost: 0,
        slope: 0,
        bent: false,
        values: program.columns.map(() => 0),
        active: [],
      }
    : ask(Math.max(1, start * tol.pastFloor))
  if (!last) return undefined
  return yield* convexCurve(first, last, ask)
}

/**
 * Tangents to start a point from: those that its neighbours lean on, and one on each circle near the
 * point between them, where the answer is likely to touch it.
 * @param share of tolerance
 */
export function cutsFor(program: Program, solved: readonly PartPoint[], share: number): Cut[] {
  const below = closest(solved, (point) => share - point.share)
  const above = closest(solved, (point) => point.share - share)
  const known = [...(below?.active ?? []), ...(above?.active ?? [])]
  if (!below || !above) return known
  const part = (share - below.share) / (above.share - below.share)
  const between = below.values.map((value, c) => value + part * ((above.values[c] ?? 0) - value))
  const likely = program.circles.flatMap((circle, c): Cut[] => {
    const radius = affineValue(circle.radius, between)
    const { distance, angle } = farthestReach(circle, between)
    if (distance - radius < -tol.nearCircle * radius) return []
    return [{ circle: c, angle }]
  })
  return distinct(program, [...known, ...likely])
}

const closest = (
  points: readonly PartPoint[],
  away: (point: PartPoint) => number,
): PartPoint | undefined =>
  points.reduce<PartPoint | undefined>((a, b) => {
    if (away(b) < 0) return a
    return a === undefined || away(b) < away(a) ? b : a
  }, undefined)

/** Cuts that make rows, none twice. */
function distinct(program: Program, cuts: readonly Cut[]): Cut[] {
  const known = new Set<string>()
  return cuts.filter((cut) => {
    const key = `${cut.circle} ${cut.angle.toFixed(5)}`
    if (known.has(key)) return false
    known.add(key)
    return tangentRow(program, cut).terms.length > 0
  })
}

/** Change of the least cost with the share: the reduced cost of the share's column at its upper bound. */
function slopeOf(program: Program, cuts: readonly Cut[], { duals }: Optimal): number {
  return stageRows(program, { ask: 'cost', share: reach }, cuts).reduce((sum, row, i) => {
    const onShare = row.terms.find(([column]) => column === shareColumn)?.[1] ?? 0
    return sum - (duals[i] ?? 0) * onShare
  }, 0)
}
