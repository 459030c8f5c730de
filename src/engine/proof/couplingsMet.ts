import type { Micrometres, Millimetres } from '../../mechanics/units'
import type { Coupling, State, Train } from '../../mechanics/train'
import { growthOf, lineValueAt } from '../../mechanics/growth'
import type { Misalignment } from '../../mechanics/readings/equation'
import { axialShares } from './axialWindow'
import { carried, type ClaimedMotion } from './moved'

/**
 * Share of every tolerance that is used, from where the two shafts lie in each state.
 * @returns parts of the limits: 1 is all of one
 */
export function sharesAfter(
  train: Train,
  lines: readonly Misalignment[],
  motions: readonly ClaimedMotion[],
): { coupling: string; state: string; share: number }[] {
  return train.couplings.flatMap((coupling, c) =>
    train.states.flatMap((state) => {
      if (coupling.disengaged?.includes(state.id)) return []
      const line = lines[c]
      if (!line) throw new RangeError(`no line for coupling ${coupling.id}`)
      return {
        coupling: coupling.id,
        state: state.id,
        share: largestShare(train, coupling, state, line, motions),
      }
    }),
  )
}

/** Two ways of a plane: um, or mrad. */
export interface Sides {
  readonly y: Micrometres
  readonly z: Micrometres
}

/** What the right axis does against the left one at an x (um); an angle is a difference of two of these. */
export type AxesApart = (x: Millimetres) => Sides

/** A check of a coupling: which sides it judges, from how its axes lie apart, and within what (um, mrad). */
export interface JudgedCheck {
  readonly of: (at: AxesApart) => Sides
  readonly limit: number
}

/** Where the right axis, extended, lies against the left one at an x, in a state, as moved. */
function apart(
  train: Train,
  coupling: Coupling,
  state: State,
  line: Misalignment,
  motions: readonly ClaimedMotion[],
  x: Millimetres,
): Sides {
  // a cold setting that is used holds its coupling's growth and aim in it already
  const cold = coupling.setting?.used === true ? coupling.setting : undefined
  const shaft = (machine: number, end: 'left' | 'right'): Sides => {
    const body = train.machines[machine]
    if (!body) throw new RangeError(`no machine ${machine}`)
    const [, dy, dz] = carried(train, motions, machine, { x, ...body.axis[end] })
    if (cold) return { y: dy, z: dz }
    const growth = growthOf(body, state.id, end)
    return { y: dy + lineValueAt(growth.side, x), z: dz + lineValueAt(growth.rise, x) }
  }
  const left = shaft(coupling.left, 'right')
  const right = shaft(coupling.right, 'left')
  const aim = cold ?? coupling.aim.get(state.id)
  const arm = x - (coupling.p + coupling.q) / 2
  return {
    y: line.y + line.sy * arm + right.y - left.y - (aim ? aim.y + aim.sy * arm : 0),
    z: line.z + line.sz * arm + right.z - left.z - (aim ? aim.z + aim.sz * arm : 0),
  }
}

/** Where the axes of a coupling lie apart in a state, as moved. */
export const apartIn =
  (
    train: Train,
    coupling: Coupling,
    state: State,
    line: Misalignment,
    motions: readonly ClaimedMotion[],
  ): AxesApart =>
  (x) =>
    apart(train, coupling, state, line, motions, x)

function largestShare(
  train: Train,
  coupling: Coupling,
  state: State,
  line: Misalignment,
  motions: readonly ClaimedMotion[],
): number {
  const at = apartIn(train, coupling, state, line, motions)
  const size = ({ y, z }: Sides) =>
    coupling.tolerance.shape === 'round'
      ? Math.sqrt(y * y + z * z)
      : Math.max(Math.abs(y), Math.abs(z))
  const shares = judgedChecks(coupling).map(
    ({ of, limit }) => size(of(at)) / (limit * state.factor),
  )
  const { axial } = coupling
  if (axial)
    shares.push(...axialShares(axial, gapError(train, coupling, state, motions), state.factor))
  return Math.max(...shares)
}

/** The checks that a tolerance sets: both planes, the offset at mid-span, the angle. */
export function judgedChecks({
  p,
  q,
  tolerance,
}: Pick<Coupling, 'p' | 'q' | 'tolerance'>): JudgedCheck[] {
  const { flex, offset, angle } = tolerance
  const over = (sides: Sides, length: Millimetres): Sides => ({
    y: sides.y / length,
    z: sides.z / length,
  })
  const mid = (p + q) / 2
  const turn = (at: AxesApart): Sides => {
    const [before, after] = [at(mid - 500), at(mid + 500)]
    return { y: after.y - before.y, z: after.z - before.z }
  }
  return [
    ...(flex === undefined
      ? []
      : [
          { of: (at: AxesApart) => over(at(q), q - p), limit: flex },
          { of: (at: AxesApart) => over(at(p), p - q), limit: flex },
        ]),
    ...(offset === undefined ? [] : [{ of: (at: AxesApart) => at(mid), limit: offset }]),
    ...(angle === undefined ? [] : [{ of: (at: AxesApart) => over(turn(at), 1000), limit: angle }]),
  ]
}

/** How far the gap between the shaft ends, rotors where they lay, is from what is wanted (mm); + is too wide. */
export function gapError(
  train: Train,
  coupling: Coupling,
  state: State,
  motions: readonly ClaimedMotion[],
): Millimetres {
  const { axial } = coupling
  if (!axial) return 0
  const end = (machine: number, side: 'left' | 'right', x: Millimetres): Micrometres => {
    const body = train.machines[machine]
    if (!body) throw new RangeError(`no machine ${machine}`)
    const growth = growthOf(body, state.id, side)
    return (
      carried(train, motions, machine, { x, ...body.axis[side] })[0] + lineValueAt(growth.axial, x)
    )
  }
  const opened = end(coupling.right, 'left', coupling.q) - end(coupling.left, 'right', coupling.p)
  return axial.found + opened / 1000 - axial.want
}
