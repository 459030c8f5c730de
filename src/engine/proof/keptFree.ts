import type { Misalignment } from '../../mechanics/readings/equation'
import { growthQuantities, type Coupling, type State, type Train } from '../../mechanics/train'
import type { CouplingMotion } from '../../mechanics/misalignment/shares'
import type { ErrorSource } from '../../mechanics/uncertainty/errorSource'
import { errorsAt, guardedErrors } from '../../mechanics/uncertainty/judged'
import { isAxial, type AxialWhat } from '../../mechanics/axial'
import { axialShares } from './axialWindow'
import { apartIn, gapError, judgedChecks, type AxesApart, type Sides } from './couplingsMet'
import type { ClaimedMotion } from './moved'

/**
 * Share of every tolerance that is used with what `plan.guard` and `plan.worst` keep free of it counted, by directions:
 * n.v + k * root of the sum of (n.e)^2 over the independent errors e + the sum of |n.c| over the intervals, each e and c
 * judged as the misalignment itself is.
 * @returns parts of the limits; none where nothing is kept
 */
export function sharesWithKept(
  train: Train,
  lines: readonly Misalignment[],
  motions: readonly ClaimedMotion[],
): { coupling: string; state: string; share: number }[] {
  const { guard, worst } = train.plan
  if (guard === 0 && !worst) return []
  const errors = guard > 0 ? guardedErrors(train) : []
  return train.couplings.flatMap((coupling, c) =>
    train.states.flatMap((state, s) => {
      if (coupling.disengaged?.includes(state.id)) return []
      const line = lines[c]
      if (!line) throw new RangeError(`no line for coupling ${coupling.id}`)
      const value = apartIn(train, coupling, state, line, motions)
      const own = errorsAt(errors, c, s)
      const segments = worst ? segmentsOf(train, coupling, state) : []
      const shares = judgedChecks(coupling).map(({ of, limit }) => {
        const reach = reachOf(
          of(value),
          own.map(({ misalignment }) => of(lineOf(coupling, misalignment))),
          segments.map(({ across }) => of(across)),
        )
        return most(coupling, reach) / (limit * state.factor)
      })
      const { axial } = coupling
      if (axial) {
        const room =
          guard * Math.sqrt(own.reduce((sum, { gap }) => sum + gap * gap, 0)) +
          segments.reduce((sum, { gap }) => sum + Math.abs(gap), 0)
        const off = gapError(train, coupling, state, motions)
        shares.push(...axialShares(axial, off, state.factor, room / 1000))
      }
      return { coupling: coupling.id, state: state.id, share: Math.max(...shares) }
    }),
  )

  /** How far it reaches in a direction, from y toward z (rad). */
  function reachOf(v: Sides, errors: readonly Sides[], segments: readonly Sides[]) {
    return (angle: number): number => {
      const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
      const toward = ({ y, z }: Sides) => cos * y + sin * z
      const squares = errors.reduce((sum, error) => sum + toward(error) ** 2, 0)
      const ends = segments.reduce((sum, segment) => sum + Math.abs(toward(segment)), 0)
      return toward(v) + guard * Math.sqrt(squares) + ends
    }
  }
}

/**
 * The room kept free of a check toward a direction: um of an offset, mrad of a plane or an angle, mm of a gap.
 * @param errors that a guard is kept against; none without one
 */
export function roomKept(
  train: Train,
  errors: readonly ErrorSource[],
  c: number,
  s: number,
  what: 'left plane' | 'right plane' | 'offset' | 'angle' | AxialWhat,
  [ny, nz]: readonly [number, number],
): number {
  const { guard, worst } = train.plan
  const [coupling, state] = [train.couplings[c], train.states[s]]
  if (!coupling || !state || (guard === 0 && !worst)) return 0
  const own = errorsAt(errors, c, s)
  const segments = worst ? segmentsOf(train, coupling, state) : []
  const together = (errors: readonly number[], ends: readonly number[]): number =>
    guard * Math.sqrt(errors.reduce((sum, e) => sum + e * e, 0)) +
    ends.reduce((sum, end) => sum + Math.abs(end), 0)
  if (isAxial(what)) {
    const gaps = (list: readonly { readonly gap: number }[]) => list.map(({ gap }) => gap)
    return (together(gaps(own), gaps(segments)) * Math.abs(ny)) / 1000
  }
  const { flex, offset } = coupling.tolerance
  const planes = flex === undefined ? 0 : 2
  const at = {
    'left plane': 0,
    'right plane': 1,
    offset: planes,
    angle: planes + (offset === undefined ? 0 : 1),
  }
  const check = judgedChecks(coupling)[at[what]]
  if (!check) return 0
  const seen = (across: AxesApart): number => {
    const { y, z } = check.of(across)
    return ny * y + nz * z
  }
  return together(
    own.map(({ misalignment }) => seen(lineOf(coupling, misalignment))),
    segments.map(({ across }) => seen(across)),
  )
}

/** A misalignment (um, mrad) as where the axes lie apart. */
const lineOf =
  ({ p, q }: Coupling, { y, z, sy, sz }: CouplingMotion['misalignment']): AxesApart =>
  (x) => {
    const arm = x - (p + q) / 2
    return { y: y + sy * arm, z: z + sz * arm }
  }

/** What half the width of an interval of growth does: where the axes then lie apart, and to the gap (um). */
interface Segment {
  readonly across: AxesApart
  readonly gap: number
}

/** Every interval that bears on a coupling in a state: the train with the value half a width higher, against it as it is. */
function segmentsOf(train: Train, coupling: Coupling, state: State): Segment[] {
  const still = train.bodies.map(() => ({ tx: 0, ty: 0, tz: 0, sy: 0, sz: 0, roll: 0 }))
  const nought = { y: 0, z: 0, sy: 0, sz: 0 }
  const seen = (of: Train): Segment => ({
    across: apartIn(of, coupling, state, nought, still),
    gap: 1000 * gapError(of, coupling, state, still),
  })
  const middle = seen(train)
  return [coupling.left, coupling.right].flatMap((m) =>
    valuesIn(train, m, state.id).flatMap(({ point, own, i }) =>
      growthQuantities.flatMap((quantity) => {
        const half = point.half[quantity]
        if (half === undefined) return []
        const higher = seen(withGrowth(train, m, own, i, quantity, half))
        const across: AxesApart = (x) => {
          const [up, now] = [higher.across(x), middle.across(x)]
          return { y: up.y - now.y, z: up.z - now.z }
        }
        return [{ across, gap: higher.gap - middle.gap }]
      }),
    ),
  )
}

/** Points that bear on a machine in a state, with the state and the place in its list where each is given. */
const valuesIn = (train: Train, m: number, state: string) => {
  const body = train.machines[m]
  const states = body?.growthBetween.get(state)?.map((part) => part.state) ?? [state]
  return states.flatMap((own) =>
    (body?.growth.get(own) ?? []).map((point, i) => ({ point, own, i })),
  )
}

/** The train with one growth value of a machine larger by an amount (um). */
function withGrowth(
  train: Train,
  machine: number,
  state: string,
  index: number,
  quantity: (typeof growthQuantities)[number],
  by: number,
): Train {
  const machines = train.machines.map((body, m) => {
    if (m !== machine) return body
    const points = (body.growth.get(state) ?? []).map((point, i) =>
      i === index ? { ...point, [quantity]: (point[quantity] ?? 0) + by } : point,
    )
    return { ...body, growth: new Map([...body.growth, [state, points]]) }
  })
  return { ...train, machines, bodies: [...machines, ...train.bodies.slice(machines.length)] }
}

/** Directions looked at first, all around. */
const directions = 360
/** Halvings of the way between two of them. */
const halvings = 40

/** The most that is reached: in the four ways of a box, or all around. */
function most({ tolerance }: Coupling, reach: (angle: number) => number): number {
  if (tolerance.shape === 'box')
    return Math.max(...[0, 1, 2, 3].map((quarter) => reach((quarter * Math.PI) / 2)))
  const step = (2 * Math.PI) / directions
  const around = Array.from({ length: directions }, (_, k) => reach(k * step))
  const at = (k: number) => around[(k + directions) % directions] ?? 0
  const tops = around.flatMap((value, k) =>
    value >= at(k - 1) && value >= at(k + 1) ? [topNear(reach, k * step, step)] : [],
  )
  return Math.max(...tops)
}

/** The top of a rise and fall, by ever smaller steps toward what is higher. */
function topNear(reach: (angle: number) => number, start: number, width: number): number {
  let [angle, best, step] = [start, reach(start), width / 2]
  for (let k = 0; k < halvings; k++) {
    for (const next of [angle - step, angle + step]) {
      const value = reach(next)
      if (value > best) [angle, best] = [next, value]
    }
    step /= 2
  }
  return best
}
