import { shaftEnds } from '../mechanics/shaftEnds'
import { growthOf, lineValueAt, type Line } from '../mechanics/growth'
import { type Millimetres } from '../mechanics/units'
import { carriers, displaced, noMotion, type Motion } from '../mechanics/motion'
import type { Body, Train } from '../mechanics/train'
import type { Misalignment } from '../mechanics/readings/equation'
import { hasMoves } from '../engine/plan/moves'
import type { DrawnAnswer } from './drawnAnswer'

/** A shaft axis as deviation from where the drawing has it, up (rise) and toward 3 o'clock (side). */
export interface Axis {
  readonly rise: Line
  readonly side: Line
}

/** One shaft axis of a machine between two x; a gearbox has two, one on either side of its middle. */
export interface AxisLines {
  readonly machine: number
  readonly axis: 'left' | 'right' | 'both'
  readonly from: Millimetres
  readonly to: Millimetres
  readonly found: Axis
  /** Absent where there is no plan. */
  readonly planned?: Axis
  /** In the order of `train.states`: the planned axis (as found without a plan), grown. */
  readonly states: readonly Axis[]
}

/** The moves of a plan, in the train's order; undefined where the answer carries none. */
export function answerMotions(train: Train, answer: DrawnAnswer): readonly Motion[] | undefined {
  if (!hasMoves(answer)) return undefined
  const { bodies } = answer
  return train.bodies.map((body) => bodies.find(({ id }) => id === body.id)?.move ?? noMotion)
}

/**
 * Lines of the whole train as found, the first machine's axis taken as straight on its drawing
 * position: each next machine's line is its left neighbour's plus the misalignment between them.
 */
export function foundAxes(train: Train, found: readonly Misalignment[]): Axis[] {
  const none: Line = { x: 0, value: 0, slope: 0 }
  const axes: Axis[] = [{ rise: none, side: none }]
  train.couplings.forEach((coupling, c) => {
    const before = axes[c]
    const d = found[c]
    if (!before || !d) throw new RangeError(`coupling ${coupling.id} was not reduced`)
    const { mid } = coupling
    axes.push({
      rise: { x: mid, value: lineValueAt(before.rise, mid) + d.z, slope: before.rise.slope + d.sz },
      side: { x: mid, value: lineValueAt(before.side, mid) + d.y, slope: before.side.slope + d.sy },
    })
  })
  return axes
}

/**
 * How far the moves carry the axis of a machine, as a line along x: um and mrad over mm.
 * @param motions own motions (um, mrad)
 */
export function movedAxis(
  train: Train,
  machine: number,
  end: 'left' | 'right',
  motions: readonly Motion[],
): Axis {
  const point = train.machines[machine]?.axis[end]
  if (!point) throw new RangeError(`no machine ${machine}`)
  const at = (x: Millimetres, way: 'dy' | 'dz') =>
    carriers(train, machine, { x, ...point }).reduce(
      (sum, { body, carry }) => sum + displaced(carry[way], motions[body] ?? noMotion),
      0,
    )
  const lineOf = (way: 'dy' | 'dz'): Line => ({
    x: 0,
    value: at(0, way),
    slope: (at(1000, way) - at(0, way)) / 1000,
  })
  return { rise: lineOf('dz'), side: lineOf('dy') }
}

const addLines = (a: Line, b: Line, sign: 1 | -1 = 1): Line => ({
  x: a.x,
  value: a.value + sign * lineValueAt(b, a.x),
  slope: a.slope + sign * b.slope,
})

const addAxes = (a: Axis, b: Axis, sign: 1 | -1 = 1): Axis => ({
  rise: addLines(a.rise, b.rise, sign),
  side: addLines(a.side, b.side, sign),
})

/** Every shaft axis of the train, relative to `zero`. */
export function axisLines(
  train: Train,
  found: readonly Misalignment[],
  motions: readonly Motion[] | undefined,
  zero: Axis,
): AxisLines[] {
  const axes = foundAxes(train, found)
  return train.machines.flatMap((machine, m) => {
    const was = axes[m]
    if (!was) throw new RangeError(`no line for machine ${machine.id}`)
    const foundLine = addAxes(was, zero, -1)
    const [from, to] = shaftEnds(train, m)
    const middle = Math.min(Math.max(machine.x0, from), to)
    const piece = (axis: AxisLines['axis'], a: Millimetres, b: Millimetres): AxisLines => {
      const end = axis === 'both' ? 'left' : axis
      const planned = motions && addAxes(foundLine, movedAxis(train, m, end, motions))
      return {
        machine: m,
        axis,
        from: a,
        to: b,
        found: foundLine,
        ...(planned && { planned }),
        states: train.states.map(({ id }) =>
          addAxes(planned ?? foundLine, grownAxis(machine, id, end)),
        ),
      }
    }
    return machine.twoAxes
      ? [piece('left', from, middle), piece('right', middle, to)]
      : [piece('both', from, to)]
  })
}

const grownAxis = (machine: Body, state: string, end: 'left' | 'right'): Axis => {
  const { rise, side } = growthOf(machine, state, end)
  return { rise, side }
}
