import { column, fixed, sum, type Affine } from './affine'
import { addColumn, type Program } from './program'
import type { LeftOut } from './terms'
import type { Body, Machine, Train } from './train'

const oneX = 1e-6 // mm: feet no further apart than this stand at one x

/** The six small motions of one body: um and mrad. */
export interface Six {
  tx: Affine
  ty: Affine
  tz: Affine
  sy: Affine
  sz: Affine
  roll: Affine
}

/** A body in motion about its reference point, and the skid under it. */
export interface Mover {
  body: Body
  x0: number
  own: Six
  /** Height of the body's feet above the plane of the skid's feet (mm). */
  base: number
  under: Mover | undefined
}

/** A point of a body: x of the train, y and z from the middle of its feet's plane (mm). */
export interface Point {
  x: number
  y: number
  z: number
}

/** How far a point is carried (um): along, toward 3 o'clock, up. */
export interface Carried {
  x: Affine
  y: Affine
  z: Affine
}

/** Whether the body makes no motion of its own. */
export function isHeld(body: Body, leaveOut?: LeftOut): boolean {
  if (body.feet.length === 0) return true
  if (body.anchored !== undefined) return leaveOut !== 'anchored'
  return (body.held ?? false) && leaveOut !== 'held'
}

function spread(values: number[]): number {
  return values.length === 0 ? 0 : Math.max(...values) - Math.min(...values)
}

/** Columns are micrometres at the outermost foot, so that all of them are of one size. */
function slant(program: Program, arm: number): Affine {
  return column(addColumn(program, -Infinity, Infinity), 1 / arm)
}

function freeMotion(program: Program, body: Body, x0: number, leaveOut: LeftOut): Six {
  const still = isHeld(body, leaveOut)
  const shim = !still && ((body.free?.shim ?? true) || leaveOut === 'free shim')
  const side = !still && ((body.free?.side ?? true) || leaveOut === 'free side')
  const axial = !still && (body.free?.axial ?? false) && leaveOut !== 'axial motion'
  const xs = body.feet.map((f) => f.x)
  const ys = body.feet.map((f) => f.y ?? 0)
  const pitches = spread(xs) > oneX || leaveOut === 'one row of feet does not pitch'
  const rolls = shim && (body.free?.roll ?? false) && spread(ys) > oneX && leaveOut !== 'roll'
  const long = Math.max(...xs.map((x) => Math.abs(x - x0)), 1)
  const wide = Math.max(...ys.map((y) => Math.abs(y)), 1)
  const shift = (free: boolean) =>
    free ? column(addColumn(program, -Infinity, Infinity)) : fixed(0)
  return {
    tx: shift(axial),
    ty: shift(side),
    tz: shift(shim),
    sy: side && pitches ? slant(program, long) : fixed(0),
    sz: shim && pitches ? slant(program, long) : fixed(0),
    roll: rolls ? slant(program, wide) : fixed(0),
  }
}

/** Every body of the train by its id, with the columns of the motions it is free to make. */
export function movers(program: Program, train: Train, leaveOut?: LeftOut): Map<string, Mover> {
  const all = new Map<string, Mover>()
  const add = (body: Body, base: number, under: Mover | undefined) => {
    const count = Math.max(1, body.feet.length)
    const x0 = body.feet.reduce((total, f) => total + f.x, 0) / count
    const own = freeMotion(program, body, x0, leaveOut)
    all.set(body.id, { body, x0, own, base, under })
  }
  for (const skid of train.skids ?? []) add(skid, 0, undefined)
  for (const machine of train.machines) {
    const skid = (train.skids ?? []).find((s) => s.carries.includes(machine.id))
    const under = leaveOut === 'skid carries its machines' || !skid ? undefined : all.get(skid.id)
    add(machine, leaveOut === 'base height' ? 0 : (machine.base ?? 0), under)
  }
  return all
}

/** A point's displacement by the body's own motion alone. */
export function ownCarry(mover: Mover, p: Point): Carried {
  const { own, x0 } = mover
  return {
    x: sum([1, own.tx], [-p.y, own.sy], [-p.z, own.sz]),
    y: sum([1, own.ty], [p.x - x0, own.sy], [-p.z, own.roll]),
    z: sum([1, own.tz], [p.x - x0, own.sz], [p.y, own.roll]),
  }
}

/** A point's displacement by the body's own motion and its skid's. */
export function carry(mover: Mover, p: Point): Carried {
  const own = ownCarry(mover, p)
  if (!mover.under) return own
  const by = ownCarry(mover.under, { ...p, z: p.z + mover.base })
  return {
    x: sum([1, own.x], [1, by.x]),
    y: sum([1, own.y], [1, by.y]),
    z: sum([1, own.z], [1, by.z]),
  }
}

/** Where a machine's axis lies at its left or its right end, across the train (mm). */
export function axisOf(machine: Machine, end: 'left' | 'right'): { y: number; z: number } {
  const axis = 'left' in machine.axis ? machine.axis[end] : machine.axis
  return { y: axis.y ?? 0, z: axis.z }
}

/** How far a machine's axis is carried at x. */
export function axisCarry(
  mover: Mover,
  axis: { y: number; z: number },
  x: number,
  leaveOut?: LeftOut,
): Carried {
  const full = carry(mover, { x, ...axis })
  const flat = (y: number, z: number) => carry(mover, { x, y, z })
  const noHeight = { ...mover, base: 0 }
  const without: Partial<Record<NonNullable<LeftOut>, () => Carried>> = {
    'roll lifts an axis off centre': () => ({ ...full, z: flat(0, axis.z).z }),
    'roll carries the axis sideways': () => ({
      ...full,
      y: carry(noHeight, { x, y: axis.y, z: 0 }).y,
    }),
    'pitch carries the axis along': () => ({
      ...full,
      x: carry(noHeight, { x, y: axis.y, z: 0 }).x,
    }),
    'yaw carries the axis along': () => ({ ...full, x: flat(0, axis.z).x }),
  }
  return (leaveOut && without[leaveOut]?.()) ?? full
}
