import type { Micrometres, Millimetres } from '../../mechanics/units'
import type { Coupling, State, Train } from '../../mechanics/train'
import { growthOf, lineValueAt } from '../../mechanics/growth'
import type { Misalignment } from '../../mechanics/readings/equation'
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
    train.states.map((state) => {
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

interface Sides {
  readonly y: Micrometres
  readonly z: Micrometres
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

function largestShare(
  train: Train,
  coupling: Coupling,
  state: State,
  line: Misalignment,
  motions: readonly ClaimedMotion[],
): number {
  const { p, q, tolerance } = coupling
  const at = (x: Millimetres) => apart(train, coupling, state, line, motions, x)
  const size = ({ y, z }: Sides) =>
    tolerance.shape === 'round' ? Math.sqrt(y * y + z * z) : Math.max(Math.abs(y), Math.abs(z))
  const part = (limit: number, sides: Sides) => size(sides) / (limit * state.factor)
  const over = (sides: Sides, length: Millimetres): Sides => ({
    y: sides.y / length,
    z: sides.z / length,
  })
  const shares: number[] = []
  if (tolerance.flex !== undefined)
    shares.push(part(tolerance.flex, over(at(q), q - p)), part(tolerance.flex, over(at(p), p - q)))
  const mid = (p + q) / 2
  if (tolerance.offset !== undefined) shares.push(part(tolerance.offset, at(mid)))
  if (tolerance.angle !== undefined) {
    const [before, after] = [at(mid - 500), at(mid + 500)]
    const turn = { y: after.y - before.y, z: after.z - before.z }
    shares.push(part(tolerance.angle, over(turn, 1000)))
  }
  if (coupling.axial) shares.push(gapShare(train, coupling, state, motions))
  return Math.max(...shares)
}

function gapShare(
  train: Train,
  coupling: Coupling,
  state: State,
  motions: readonly ClaimedMotion[],
): number {
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
  const gap = axial.found + opened / 1000
  return Math.abs(gap - axial.want) / (axial.tolerance * state.factor)
}
