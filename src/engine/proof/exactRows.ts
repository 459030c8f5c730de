import type { Coupling, Train } from '../../mechanics/train'
import { growthOf, type Line } from '../../mechanics/growth'
import { tol } from '../../mechanics/tolerances'
import type { Misalignment } from '../../mechanics/readings/equation'
import type { AxialWhat } from '../../mechanics/axial'
import { axialEnds } from './axialWindow'
import { Exact } from './exact'

/** A constant and so much of each motion: six columns a body. */
export interface ExactSide {
  readonly constant: Exact
  readonly terms: ReadonlyMap<number, Exact>
}

const number = (value: number): Exact => Exact.of(value)
const half = number(0.5)

const names = ['tx', 'ty', 'tz', 'sy', 'sz', 'roll'] as const
type Motion = (typeof names)[number]
const freedoms = {
  tx: 'axial',
  ty: 'slide',
  tz: 'rise',
  sy: 'yaw',
  sz: 'pitch',
  roll: 'roll',
} as const satisfies Record<Motion, string>

const column = (body: number, motion: Motion): number => body * names.length + names.indexOf(motion)

/** Sum of factor times side. */
export function sum(...parts: readonly (readonly [Exact, ExactSide])[]): ExactSide {
  const terms = new Map<number, Exact>()
  let constant = Exact.zero
  for (const [factor, side] of parts) {
    constant = constant.plus(factor.times(side.constant))
    for (const [at, value] of side.terms)
      terms.set(at, (terms.get(at) ?? Exact.zero).plus(factor.times(value)))
  }
  return { constant, terms }
}

const fixed = (constant: Exact): ExactSide => ({ constant, terms: new Map() })
export const one = number(1)
const minusOne = number(-1)

/** A motion of a body; nothing where it is held or not free to make it. */
function motionOf(train: Train, b: number, motion: Motion): ExactSide {
  const body = train.bodies[b]
  const free = body && !body.held && body.may[freedoms[motion]]
  return { constant: Exact.zero, terms: free ? new Map([[column(b, motion), one]]) : new Map() }
}

interface ExactPoint {
  readonly x: Exact
  readonly y: Exact
  readonly z: Exact
}

/** Displacement (um) of a point at an arm (mm), t + w x arm with w = (roll, -pitch, yaw), each component an exact sum. */
function displaced(
  train: Train,
  b: number,
  { x, y, z }: ExactPoint,
): Record<Coordinate, ExactSide> {
  const of = (motion: Motion) => motionOf(train, b, motion)
  const [wx, wy, wz] = [of('roll'), sum([minusOne, of('sz')]), of('sy')]
  return {
    x: sum([one, of('tx')], [z, wy], [y.negative(), wz]),
    y: sum([one, of('ty')], [x, wz], [z.negative(), wx]),
    z: sum([one, of('tz')], [y, wx], [x.negative(), wy]),
  }
}

type Coordinate = 'x' | 'y' | 'z'
interface Point {
  readonly x: number
  readonly y: number
  readonly z: number
}

const exactly = ({ x, y, z }: Point): ExactPoint => ({ x: number(x), y: number(y), z: number(z) })

/** Of a point of a body, by its own motion (mm from the plane of its feet). */
export function ownMove(train: Train, b: number, point: Point, x = number(point.x)) {
  const { y, z } = exactly(point)
  return displaced(train, b, { x: x.minus(number(train.bodies[b]?.x0 ?? 0)), y, z })
}

/** Of a point of a body, by its own motion and its skid's. */
export function carriedMove(train: Train, b: number, point: Point, x = number(point.x)) {
  const own = ownMove(train, b, point, x)
  const body = train.bodies[b]
  const skid = body?.skid === undefined ? undefined : train.bodies[body.skid]
  if (!body || body.skid === undefined || !skid) return own
  const { y, z } = exactly(point)
  const arm = { x: x.minus(number(skid.x0)), y, z: number(body.base).plus(z) }
  const below = displaced(train, body.skid, arm)
  return {
    x: sum([one, own.x], [one, below.x]),
    y: sum([one, own.y], [one, below.y]),
    z: sum([one, own.z], [one, below.z]),
  }
}

/** Pitch (mrad) of a body and its skid. */
export function pitched(train: Train, b: number): ExactSide {
  const skid = train.bodies[b]?.skid
  const own = motionOf(train, b, 'sz')
  return skid === undefined ? own : sum([one, own], [one, motionOf(train, skid, 'sz')])
}

const onLine = ({ x, value, slope }: Line, at: Exact): Exact =>
  number(value).plus(number(slope).times(at.minus(number(x))))

/** Where the axes of a coupling lie apart in a state at an x (um): the line found, the motions, growth, what is aimed at. */
function apartAt(
  train: Train,
  coupling: Coupling,
  state: string,
  line: Misalignment,
  x: Exact,
): { y: ExactSide; z: ExactSide } {
  const cold = coupling.setting?.used === true ? coupling.setting : undefined
  const shaft = (machine: number, end: 'left' | 'right') => {
    const body = train.machines[machine]
    if (!body) throw new RangeError(`no machine ${machine}`)
    const moved = carriedMove(train, machine, { x: 0, ...body.axis[end] }, x)
    if (cold) return moved
    const growth = growthOf(body, state, end)
    return {
      y: sum([one, moved.y], [one, fixed(onLine(growth.side, x))]),
      z: sum([one, moved.z], [one, fixed(onLine(growth.rise, x))]),
    }
  }
  const [left, right] = [shaft(coupling.left, 'right'), shaft(coupling.right, 'left')]
  const aim = cold ?? coupling.aim.get(state)
  const arm = x.minus(middle(coupling))
  const way = (way: 'y' | 'z', slope: 'sy' | 'sz') => {
    const there = number(line[way]).plus(number(line[slope]).times(arm))
    const wanted = aim ? number(aim[way]).plus(number(aim[slope]).times(arm)) : Exact.zero
    return sum([one, fixed(there.minus(wanted))], [one, right[way]], [minusOne, left[way]])
  }
  return { y: way('y', 'sy'), z: way('z', 'sz') }
}

/** The other way round. */
const turned = ({ y, z }: { readonly y: ExactSide; readonly z: ExactSide }) => ({
  y: sum([minusOne, y]),
  z: sum([minusOne, z]),
})

const middle = ({ p, q }: Coupling): Exact => number(p).plus(number(q)).times(half)

/** A check of a coupling: what it judges, and its limit times the share, both times a scale that needs no division. */
export interface ExactCheck {
  readonly y: ExactSide
  readonly z: ExactSide
  readonly limit: Exact
  /** Of mrad or um of the check, what it is told in here. */
  readonly scale: Exact
}

export type CheckName = 'left plane' | 'right plane' | 'offset' | 'angle' | AxialWhat

/** @returns undefined where the coupling has no such check */
export function exactCheck(
  train: Train,
  coupling: Coupling,
  state: { readonly id: string; readonly factor: number },
  line: Misalignment,
  what: CheckName,
): ExactCheck | undefined {
  const { flex, offset, angle } = coupling.tolerance
  const at = (x: Exact) => apartAt(train, coupling, state.id, line, x)
  const factor = number(state.factor)
  const span = number(coupling.q).minus(number(coupling.p))
  const within = (limit: number, scale: Exact) => ({
    limit: number(limit).times(factor).times(scale),
    scale,
  })
  switch (what) {
    case 'left plane':
    case 'right plane':
      if (flex === undefined) return undefined
      if (what === 'left plane') return { ...at(number(coupling.q)), ...within(flex, span) }
      return { ...turned(at(number(coupling.p))), ...within(flex, span) }
    case 'offset':
      return offset === undefined ? undefined : { ...at(middle(coupling)), ...within(offset, one) }
    case 'angle': {
      if (angle === undefined) return undefined
      const [before, after] = [-500, 500].map((by) => at(middle(coupling).plus(number(by))))
      if (!before || !after) return undefined
      return {
        y: sum([one, after.y], [minusOne, before.y]),
        z: sum([one, after.z], [minusOne, before.z]),
        ...within(angle, number(1000)),
      }
    }
    case 'gap':
    case 'stretch':
    case 'float': {
      const { axial } = coupling
      const ends = axial && axialEnds(axial, what)
      if (!axial || !ends) return undefined
      const end = (machine: number, side: 'left' | 'right', x: number) => {
        const body = train.machines[machine]
        if (!body) throw new RangeError(`no machine ${machine}`)
        const growth = onLine(growthOf(body, state.id, side).axial, number(x))
        return sum(
          [one, carriedMove(train, machine, { x, ...body.axis[side] }).x],
          [one, fixed(growth)],
        )
      }
      const opened = sum(
        [one, end(coupling.right, 'left', coupling.q)],
        [minusOne, end(coupling.left, 'right', coupling.p)],
      )
      const all = (parts: readonly number[]) =>
        parts.reduce((total, part) => total.plus(number(part)), Exact.zero)
      const [low, high] = [all(ends.low), all(ends.high)]
      const off = number(axial.found).minus(number(axial.want)).minus(low.plus(high).times(half))
      const limit = high.minus(low).times(half).times(number(1000))
      return {
        y: sum([one, opened], [one, fixed(off.times(number(1000)))]),
        z: fixed(Exact.zero),
        // what makers allow is the same in every state
        limit: what === 'gap' ? limit.times(factor) : limit,
        scale: number(1000),
      }
    }
  }
}

/** No plan moves a body, or its outermost foot, farther than this (um or mrad of that column). */
export function farthestOf(train: Train, at: number): Exact {
  const body = train.bodies[Math.floor(at / names.length)]
  const motion = names[at % names.length] ?? 'tx'
  if (!body || !['sy', 'sz', 'roll'].includes(motion)) return number(tol.farthest)
  const arms = body.feet.map((foot) => Math.abs(motion === 'roll' ? foot.y : foot.x - body.x0))
  // an arm rounded down is a motion rounded up
  return number((tol.farthest / Math.max(...arms)) * (1 + 2 ** -50))
}
