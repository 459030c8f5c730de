import type { Streams } from './streams'
import type { Body, Foot, Machine, Skid, Train } from './train'

/** The motion that would put a hidden train right: um and mrad about x0 (mm). */
export interface HiddenMotion {
  x0: number
  tx: number
  ty: number
  tz: number
  sy: number
  sz: number
  roll: number
}

export interface Spot {
  x: number
  y: number
  z: number
}

/** How far one motion carries a point of its body (um). */
function carriedBy(m: HiddenMotion, p: Spot): Spot {
  return {
    x: m.tx - m.sy * p.y - m.sz * p.z,
    y: m.ty + m.sy * (p.x - m.x0) - m.roll * p.z,
    z: m.tz + m.sz * (p.x - m.x0) + m.roll * p.y,
  }
}

function meanX(feet: Foot[]): number {
  return feet.reduce((total, f) => total + f.x, 0) / Math.max(1, feet.length)
}

/** A motion the body is free to make, about `size` um at its outer feet. */
export function hiddenMotion(streams: Streams, body: Body, size: number): HiddenMotion {
  const x0 = meanX(body.feet)
  const still = { x0, tx: 0, ty: 0, tz: 0, sy: 0, sz: 0, roll: 0 }
  if (body.feet.length === 0 || body.anchored !== undefined || body.held) return still
  const long = Math.max(...body.feet.map((f) => Math.abs(f.x - x0)))
  const by = (way: keyof HiddenMotion) => streams.of('motion', body.id, way).about(size)
  const motion = { ...still }
  if (body.free?.shim !== false) {
    motion.tz = by('tz')
    if (long > 0) motion.sz = by('sz') / long
    if (body.free?.roll) motion.roll = by('roll') / 1500
  }
  if (body.free?.side !== false) {
    motion.ty = by('ty')
    if (long > 0) motion.sy = by('sy') / long
  }
  if (body.free?.axial) motion.tx = by('tx')
  return aroundKeys(motion, body.feet)
}

/** Turns the motion about a foot that may not rise or slide. */
function aroundKeys(m: HiddenMotion, feet: Foot[]): HiddenMotion {
  const unshimmed = feet.find((f) => f.free?.shim === false)
  const keyed = feet.find((f) => f.free?.side === false)
  return {
    ...m,
    tz: unshimmed ? -m.sz * (unshimmed.x - m.x0) - m.roll * (unshimmed.y ?? 0) : m.tz,
    ty: keyed ? -m.sy * (keyed.x - m.x0) : m.ty,
  }
}

/** The hidden motions of every body, and the displacement of any point of a body by them. */
export class HiddenMotions {
  private readonly by = new Map<string, HiddenMotion>()

  constructor(private readonly skids: Skid[]) {}

  set(id: string, motion: HiddenMotion): void {
    this.by.set(id, motion)
  }

  own(id: string, p: Spot): Spot {
    const motion = this.by.get(id)
    return motion ? carriedBy(motion, p) : { x: 0, y: 0, z: 0 }
  }

  /** Own motion and the skid's; `base` is the height of the body's feet above the skid's feet. */
  whole(id: string, base: number, p: Spot): Spot {
    const own = this.own(id, p)
    const skid = this.skids.find((s) => s.carries.includes(id))
    if (!skid) return own
    const under = this.own(skid.id, { ...p, z: p.z + base })
    return { x: own.x + under.x, y: own.y + under.y, z: own.z + under.z }
  }

  /** Pitch of a body from where it lies (mrad), its skid's included. */
  pitch(id: string): number {
    const skid = this.skids.find((s) => s.carries.includes(id))
    return (this.by.get(id)?.sz ?? 0) + (skid ? (this.by.get(skid.id)?.sz ?? 0) : 0)
  }
}

/** How far the hidden motions carry a machine's axis at x. */
export function axisMoved(
  motions: HiddenMotions,
  machine: Machine,
  end: 'left' | 'right',
  x: number,
): Spot {
  const axis = 'left' in machine.axis ? machine.axis[end] : machine.axis
  return motions.whole(machine.id, machine.base ?? 0, { x, y: axis.y ?? 0, z: axis.z })
}

/** The machine with this id. */
export function machineOf(train: Pick<Train, 'machines'>, id: string): Machine {
  const machine = train.machines.find((m) => m.id === id)
  if (!machine) throw new Error(`no machine ${id}`)
  return machine
}
