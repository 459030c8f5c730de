import type { Millimetres } from '../mechanics/units'
import type { Body, Train } from '../mechanics/train'
import { shaftEnds } from '../mechanics/shaftEnds'

/**
 * Where a body stands in the drawing. Shafts that a coupling joins are drawn in one line, so each
 * machine stands as high and as far to the side as its left neighbour's shaft asks; the moves and
 * misalignments of the plan are far too small to show here.
 */
export interface MachineStanding {
  readonly body: Body
  /** Casing, left and right end. */
  readonly from: Millimetres
  readonly to: Millimetres
  /** Height of the plane of the feet. */
  readonly feet: Millimetres
  /** Sideways place of the body's own y = 0. */
  readonly origin: Millimetres
  /** Heights of the shaft axis at its two ends. */
  readonly left: Millimetres
  readonly right: Millimetres
  /** Ends of the shaft: flex planes, or a little beyond the casing. */
  readonly shaft: readonly [Millimetres, Millimetres]
}

/** Machines in train order, then skids, as they stand in the drawing. */
export function machineStandings(train: Train): readonly MachineStanding[] {
  const machines: MachineStanding[] = []
  let level = 0
  let across = 0
  train.machines.forEach((body, m) => {
    const { left, right } = body.axis
    const feet = m === 0 ? 0 : level - left.z
    const origin = m === 0 ? 0 : across - left.y
    const [from, to] = casing(train, m)
    const [a, b] = shaftEnds(train, m)
    machines.push({
      body,
      from,
      to,
      feet,
      origin,
      left: feet + left.z,
      right: feet + right.z,
      shaft: [Math.min(a, from), Math.max(b, to)],
    })
    level = feet + right.z
    across = origin + right.y
  })
  const skids = train.bodies.slice(train.machines.length).map((body, k): MachineStanding => {
    const carried = machines.filter(({ body: m }) => m.skid === train.machines.length + k)
    const first = carried[0]
    const xs = [...body.feet.map(({ x }) => x), ...carried.flatMap(({ from, to }) => [from, to])]
    const feet = Math.min(0, ...carried.map((m) => m.feet - m.body.base))
    const [from, to] = [Math.min(...xs), Math.max(...xs)]
    return {
      body,
      from,
      to,
      feet,
      origin: first?.origin ?? 0,
      left: feet,
      right: feet,
      shaft: [from, to],
    }
  })
  return [...machines, ...skids]
}

/** A casing reaches a little past its outermost feet, and well short of its flex planes. */
function casing(train: Train, machine: number): readonly [Millimetres, Millimetres] {
  const body = train.machines[machine]
  if (!body) throw new RangeError(`no machine ${machine}`)
  const [a, b] = shaftEnds(train, machine)
  const feet = body.feet.map(({ x }) => x)
  const height = Math.max(body.axis.left.z, body.axis.right.z, 100)
  if (feet.length === 0) {
    const inset = (b - a) * 0.12
    return [a + inset, b - inset]
  }
  const [low, high] = [Math.min(...feet), Math.max(...feet)]
  const over = high > low ? 0.2 * (high - low) : 0.5 * height
  const open = { left: machine === 0, right: machine === train.machines.length - 1 }
  const from = open.left ? low - over : Math.min(low, Math.max(low - over, low - 0.62 * (low - a)))
  const to = open.right
    ? high + over
    : Math.max(high, Math.min(high + over, high + 0.62 * (b - high)))
  return [from, to]
}
