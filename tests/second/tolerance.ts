import { column, fixed, sum, type Affine } from './affine'
import { growthAt } from './growth'
import { axisCarry, axisOf, type Mover } from './motion'
import { centred, endwiseLimits, type EndwiseFamily } from './endwise'
import type { Family, Program } from './program'
import { midSpan, type Misalignment } from './reading'
import type { Reserve } from './sure/reserve'
import type { LeftOut } from './terms'
import {
  statesOf,
  type Coupling,
  type Machine,
  type Setting,
  type State,
  type Train,
} from './train'

/** One tolerance check of one coupling in one state, as a share of its limit (no unit). */
export interface Check {
  coupling: string
  state: string
  family: Family & ('flex' | 'offset' | 'angle' | 'axial gap' | EndwiseFamily)
  what: 'left plane' | 'right plane' | 'offset' | 'angle' | 'gap' | 'stretch' | 'float'
  /** What the guard and intervals of growth keep free of it in a direction; absent where nothing is. */
  reserve?: Reserve
  round: boolean
  y: Affine
  /** Absent for the axial gap, which has one direction. */
  z: Affine | undefined
}

function machineOf(train: Train, id: string): Machine {
  const machine = train.machines.find((m) => m.id === id)
  if (!machine) throw new Error(`no machine ${id}`)
  return machine
}

interface Joint {
  train: Train
  c: Coupling
  found: Misalignment
  all: Map<string, Mover>
  leaveOut: LeftOut
}

/** The maker's cold setting where the coupling is judged by it. */
function settingOf({ c, leaveOut }: Joint): Setting | undefined {
  return c.setting?.use === true || leaveOut === 'setting that is not used' ? c.setting : undefined
}

/** How far one machine's shaft end is carried at x, with the growth of the state (um). */
function shaftEnd(joint: Joint, end: 'left' | 'right', state: string, x: number) {
  const { train, c, all, leaveOut } = joint
  const machine = machineOf(train, c[end].machine)
  const mover = all.get(machine.id)
  if (!mover) throw new Error(`no mover ${machine.id}`)
  // the coupling's left machine joins with the axis at its right end, and the other way round
  const axisEnd = end === 'left' ? 'right' : 'left'
  const by = axisCarry(mover, axisOf(machine, axisEnd), x, leaveOut)
  const growth = growthAt(statesOf(train), machine, axisEnd, state, x, leaveOut)
  // the maker's cold setting has what the shafts do across the train in it; along it, it says nothing
  const across = settingOf(joint) === undefined || leaveOut === 'setting in place of growth'
  const grown = across ? growth : { x: growth.x, y: 0, z: 0 }
  return {
    x: sum([1, by.x], [1, fixed(grown.x)]),
    y: sum([1, by.y], [1, fixed(grown.y)]),
    z: sum([1, by.z], [1, fixed(grown.z)]),
  }
}

/** The misalignment at x in a state, less what was aimed for (um). */
function misalignedBy(joint: Joint, axis: 'y' | 'z', state: string, x: number): Affine {
  const { c, found, leaveOut } = joint
  const arm = x - midSpan(c)
  const setting = settingOf(joint)
  const aim = setting ?? c.aim?.[state]
  const sort = setting ? 'setting' : 'aim'
  const aimed =
    (leaveOut === `${sort} offset` ? 0 : (aim?.offset?.[axis] ?? 0)) +
    (leaveOut === `${sort} slope` ? 0 : (aim?.slope?.[axis] ?? 0)) * arm
  return sum(
    [1, fixed(found.offset[axis] + found.slope[axis] * arm - aimed)],
    [1, shaftEnd(joint, 'right', state, x)[axis]],
    [-1, shaftEnd(joint, 'left', state, x)[axis]],
  )
}

function checksIn(joint: Joint, state: State): Check[] {
  const { c, leaveOut } = joint
  const factor = leaveOut === 'state factor' ? 1 : (state.tolerance ?? 1)
  const p = c.left.plane
  const q = c.right.plane
  const m = midSpan(c)
  const at = (x: number, per: number) => ({
    y: sum([1 / per, misalignedBy(joint, 'y', state.id, x)]),
    z: sum([1 / per, misalignedBy(joint, 'z', state.id, x)]),
  })
  const round = c.tolerance.shape === 'round' && leaveOut !== 'round'
  const checks: Check[] = []
  const add = (
    what: Check['what'],
    family: Check['family'],
    limit: number | undefined,
    v: Pick<Check, 'y' | 'z'>,
  ) => {
    if (limit === undefined || leaveOut === family) return
    const per = 1 / (limit * factor)
    checks.push({
      coupling: c.id,
      state: state.id,
      family,
      what,
      round: round && v.z !== undefined,
      y: sum([per, v.y]),
      z: v.z && sum([per, v.z]),
    })
  }
  const { flex, offset, angle } = c.tolerance
  if (flex !== undefined) {
    add('left plane', 'flex', flex, at(q, q - p))
    add('right plane', 'flex', flex, at(p, p - q))
  }
  add('offset', 'offset', offset, at(m, 1))
  const reach = 500 // mm each side of mid-span: a straight line's slope is the same from any two points
  const near = at(m - reach, 2 * reach)
  const far = at(m + reach, 2 * reach)
  add('angle', 'angle', angle, {
    y: sum([1, far.y], [-1, near.y]),
    z: sum([1, far.z], [-1, near.z]),
  })
  if (c.axial) {
    const { found, want, tolerance } = c.axial
    const gap = sum(
      [1, fixed((found - want) * 1000)],
      [1, shaftEnd(joint, 'right', state.id, q).x],
      [-1, shaftEnd(joint, 'left', state.id, p).x],
    )
    const off = (by: number) => sum([1, gap], [1, fixed(-by * 1000)])
    add('gap', 'axial gap', tolerance * 1000, { y: off(centred(c.axial, leaveOut)), z: undefined })
    for (const { what, family, middle, half } of endwiseLimits(c.axial, leaveOut)) {
      if (leaveOut === family) continue
      checks.push({
        ...{ coupling: c.id, state: state.id, family, what, round: false, z: undefined },
        y: sum([1 / (half * 1000), off(middle)]),
      })
    }
  }
  return checks
}

/** All checks of one coupling in all the states. */
export function couplingChecks(
  train: Train,
  c: Coupling,
  found: Misalignment,
  states: State[],
  all: Map<string, Mover>,
  leaveOut?: LeftOut,
): Check[] {
  const joint = { train, c, found, all, leaveOut }
  return states.flatMap((state) =>
    leaveOut !== 'open clutch' && c.disengaged?.includes(state.id) ? [] : checksIn(joint, state),
  )
}

/** Adds the rows that keep every check within the worst share. */
export function addChecks(program: Program, checks: Check[]): void {
  const worst = column(program.worst)
  for (const { family, round, y, z, reserve } of checks) {
    if (round && z) {
      const circle = { family, also: ['round'], a: y, b: z, radius: worst, slack: 1e-8 }
      program.circles.push(reserve ? { ...circle, reserve } : circle)
      continue
    }
    const also = z ? ['box'] : []
    for (const [part, cos, sin] of z
      ? ([
          [y, 1, 0],
          [z, 0, 1],
        ] as const)
      : ([[y, 1, 0]] as const)) {
      const low = reserve?.(cos, sin) ?? 0
      const above = sum([1, worst], [-1, part])
      const below = sum([1, worst], [1, part])
      program.rows.push({ family, also, expression: above, low, high: Infinity })
      program.rows.push({ family, also, expression: below, low, high: Infinity })
    }
  }
}
