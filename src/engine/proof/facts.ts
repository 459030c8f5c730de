import type { Misalignment } from '../../mechanics/readings/equation'
import type { ToothPlace } from '../../mechanics/gearCoupling'
import type { FootLimit } from '../../mechanics/footLimits'
import type { Train } from '../../mechanics/train'
import { isAxial } from '../../mechanics/axial'
import { once } from '../../mechanics/once'
import type { ErrorSource } from '../../mechanics/uncertainty/errorSource'
import { guardedErrors } from '../../mechanics/uncertainty/judged'
import { Exact } from './exact'
import {
  carriedMove,
  exactCheck,
  one,
  ownMove,
  pitched,
  sum,
  type CheckName,
  type ExactSide,
} from './exactRows'
import { roomKept } from './keptFree'

/** A direction in the plane of a check or a hole; of any length. */
export type Toward = readonly [number, number]

/** A limit that a proof leans on, in one direction; indices are those of the train. */
export type LimitFact =
  | {
      readonly is: 'tolerance'
      readonly coupling: number
      readonly state: number
      readonly what: CheckName
      /** From y toward z; along the train [1, 0] is too wide. */
      readonly toward: Toward
    }
  | {
      readonly is: 'foot'
      readonly body: number
      readonly foot: number
      readonly limit: Exclude<FootLimit, 'hole'>
      readonly side: 1 | -1
    }
  | {
      readonly is: 'hole'
      readonly body: number
      readonly foot: number
      /** From x toward y. */
      readonly toward: Toward
    }
  | {
      readonly is: 'restraint'
      readonly body: number
      readonly restraint: number
      readonly way: 'axial' | 'side' | 'rise'
      readonly side: 1 | -1
    }
  | { readonly is: 'tilt'; readonly body: number; readonly side: 1 | -1 }
  | {
      /** Of the side that the train keeps there. */
      readonly is: 'least'
      readonly coupling: number
      readonly state: number
      readonly what: ToothPlace
      readonly way: 'y' | 'z'
    }

/** side <= share * perShare + limit (um), for every allowed motion. */
export interface FactRow {
  readonly side: ExactSide
  readonly perShare: Exact
  readonly limit: Exact
}

/** What rounding may have taken from, or given to, a length that is measured and not reckoned exactly: a part of it. */
const roomForRounding = 2 ** -40

/** Makes the rows of a train's limits. */
export function factRows(
  train: Train,
  lines: readonly Misalignment[],
): (fact: LimitFact) => FactRow | undefined {
  const errors = once(() => (train.plan.guard > 0 ? guardedErrors(train) : []))
  return (fact) => factRow(train, lines, errors, fact)
}

/**
 * A limit as a row over the motions, from the train alone and reckoned exactly. A direction n of a circle of radius r holds
 * n.v <= r (1 + n.n) / 2, since |n| is not more than that; of a box n.v <= r (|n.y| + |n.z|).
 * @returns undefined where the train has no such limit
 */
function factRow(
  train: Train,
  lines: readonly Misalignment[],
  errors: () => readonly ErrorSource[],
  fact: LimitFact,
): FactRow | undefined {
  switch (fact.is) {
    case 'tolerance':
      return toleranceRow(train, lines, errors, fact)
    case 'foot':
      return footRow(train, fact)
    case 'hole': {
      const foot = train.bodies[fact.body]?.feet[fact.foot]
      if (!foot?.hole) return undefined
      const { hole } = foot
      const moved = ownMove(train, fact.body, { x: foot.x, y: foot.y, z: 0 })
      const before = Math.hypot(hole.x, hole.y) * (1 + roomForRounding)
      const allowed = hole.clearance / 2 - train.plan.reserve
      const radius =
        before > allowed
          ? Exact.of(before)
          : Exact.of(hole.clearance).times(Exact.of(0.5)).minus(Exact.of(train.plan.reserve))
      const [x, y] = fact.toward.map((n) => Exact.of(n)) as [Exact, Exact]
      const centre = { constant: x.times(Exact.of(hole.x)).plus(y.times(Exact.of(hole.y))) }
      const side = sum([x, moved.x], [y, moved.y], [one, { ...centre, terms: new Map() }])
      return { side, perShare: Exact.zero, limit: radius.times(lengthOver(x, y)) }
    }
    case 'restraint': {
      const point = train.bodies[fact.body]?.restraints[fact.restraint]
      const range = point?.[fact.way]
      if (!point || !range) return undefined
      const moved = carriedMove(train, fact.body, point)
      const side = { axial: moved.x, side: moved.y, rise: moved.z }[fact.way]
      return bounded(side, fact.side, fact.side === 1 ? range[1] : -range[0])
    }
    case 'tilt': {
      const body = train.bodies[fact.body]
      if (body?.tilt === undefined) return undefined
      const half = Math.max(1, ...body.feet.map((foot) => Math.abs(foot.x - body.x0)))
      const rise = sum([Exact.of(half), pitched(train, fact.body)])
      const limit = Exact.of(body.tilt).times(Exact.of(half))
      return { side: sum([Exact.of(fact.side), rise]), perShare: Exact.zero, limit }
    }
    case 'least':
      return leastRow(train, lines, fact)
  }
}

/** -sign * angle <= -least, of the shafts as they run: no aim is taken off. */
function leastRow(
  train: Train,
  lines: readonly Misalignment[],
  { coupling: c, state: s, what, way }: Extract<LimitFact, { is: 'least' }>,
): FactRow | undefined {
  const [coupling, state, line] = [train.couplings[c], train.states[s], lines[c]]
  const { least, sides = [] } = coupling?.gear ?? {}
  const kept = sides.find(
    (side) => side.state === state?.id && side.place === what && side.way === way,
  )
  if (!coupling || !state || !line || least === undefined || !kept) return undefined
  const asked = {
    ...coupling,
    aim: new Map(),
    tolerance: { flex: least, angle: least, shape: 'box' as const },
  }
  const check = exactCheck(train, asked, { id: state.id, factor: 1 }, line, what)
  if (!check) return undefined
  const side = sum([Exact.of(-kept.sign), check[way]])
  return { side, perShare: Exact.zero, limit: check.limit.negative() }
}

function footRow(train: Train, fact: Extract<LimitFact, { is: 'foot' }>): FactRow | undefined {
  const foot = train.bodies[fact.body]?.feet[fact.foot]
  if (!foot) return undefined
  const moved = ownMove(train, fact.body, { x: foot.x, y: foot.y, z: 0 })
  const { pack, lift } = foot
  const up = fact.side === 1
  switch (fact.limit) {
    case 'shim key':
      return foot.mayShim ? undefined : bounded(moved.z, fact.side, 0)
    case 'side key':
      return foot.maySlide ? undefined : bounded(moved.y, fact.side, 0)
    case 'lift':
      return lift !== undefined && up ? bounded(moved.z, 1, lift > 0 ? lift : 0) : undefined
    case 'minimum pack':
      if (!pack || up) return undefined
      return apart(moved.z, -1, pack.now, pack.min < pack.now ? pack.min : pack.now)
    case 'maximum pack':
      if (pack?.max === undefined || !up) return undefined
      return apart(moved.z, 1, pack.max > pack.now ? pack.max : pack.now, pack.now)
  }
}

function toleranceRow(
  train: Train,
  lines: readonly Misalignment[],
  errors: () => readonly ErrorSource[],
  fact: Extract<LimitFact, { is: 'tolerance' }>,
): FactRow | undefined {
  const [coupling, state, line] = [
    train.couplings[fact.coupling],
    train.states[fact.state],
    lines[fact.coupling],
  ]
  if (!coupling || !state || !line || coupling.disengaged?.includes(state.id)) return undefined
  const check = exactCheck(train, coupling, state, line, fact.what)
  if (!check) return undefined
  const [y, z] = fact.toward.map((n) => Exact.of(n)) as [Exact, Exact]
  const box = coupling.tolerance.shape === 'box' || isAxial(fact.what)
  const length = box ? y.abs().plus(z.abs()) : lengthOver(y, z)
  const kept = roomKept(train, errors(), fact.coupling, fact.state, fact.what, fact.toward)
  const room = Exact.of(kept * (1 - roomForRounding)).times(check.scale)
  return {
    side: sum([y, check.y], [z, check.z]),
    perShare: check.limit.times(length),
    limit: room.negative(),
  }
}

/** (1 + y^2 + z^2) / 2, not under the length of (y, z), and near it where that is near 1. */
const lengthOver = (y: Exact, z: Exact): Exact =>
  one.plus(y.times(y)).plus(z.times(z)).times(Exact.of(0.5))

const bounded = (side: ExactSide, way: 1 | -1, limit: number): FactRow => ({
  side: sum([Exact.of(way), side]),
  perShare: Exact.zero,
  limit: Exact.of(limit),
})

/** way * side <= high - low. */
const apart = (side: ExactSide, way: 1 | -1, high: number, low: number): FactRow => ({
  side: sum([Exact.of(way), side]),
  perShare: Exact.zero,
  limit: Exact.of(high).minus(Exact.of(low)),
})
