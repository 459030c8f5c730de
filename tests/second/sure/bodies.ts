import { footRows } from '../limits'
import type { Body, Foot, Machine, Train } from '../train'

/** The six small motions of a body about its reference point: um and mrad. */
export interface Motion {
  tx: number
  ty: number
  tz: number
  sy: number
  sz: number
  roll: number
}

export const still: Motion = { tx: 0, ty: 0, tz: 0, sy: 0, sz: 0, roll: 0 }

/** Feet at one x, which slide together. */
interface Row {
  x: number
  feet: Foot[]
}

/** A body on its feet, and what stands on it. */
export interface Standing {
  body: Body
  x0: number
  rows: Row[]
  /** The machines that go where it goes, with the height of their feet over its own. */
  carries: { machine: Machine; base: number }[]
}

export interface Spot {
  x: number
  y: number
  z: number
}

const oneX = 1e-6 // mm
const stands = 0.1 // um: a foot that moves less stays where it is

/** Every machine and skid of a train (in mm and um). */
export function standings(train: Train): Standing[] {
  const on = (body: Body, carries: Standing['carries']): Standing => ({
    body,
    x0: body.feet.reduce((sum, { x }) => sum + x, 0) / Math.max(1, body.feet.length),
    rows: footRows(body.feet).map(({ x }) => ({
      x,
      feet: body.feet.filter((f) => Math.abs(f.x - x) <= oneX),
    })),
    carries,
  })
  const machines = train.machines.map((machine) => on(machine, [{ machine, base: 0 }]))
  const skids = (train.skids ?? []).map((skid) =>
    on(
      skid,
      train.machines
        .filter(({ id }) => skid.carries.includes(id))
        .map((machine) => ({ machine, base: machine.base ?? 0 })),
    ),
  )
  return [...machines, ...skids]
}

/** How far a motion carries a point of its body (um). */
export const carriedBy = (m: Motion, { x0 }: Pick<Standing, 'x0'>, p: Spot): Spot => ({
  x: m.tx - m.sy * p.y - m.sz * p.z,
  y: m.ty + m.sy * (p.x - x0) - m.roll * p.z,
  z: m.tz + m.sz * (p.x - x0) + m.roll * p.y,
})

export const atFoot = (m: Motion, standing: Standing, f: Foot): Spot =>
  carriedBy(m, standing, { x: f.x, y: f.y ?? 0, z: 0 })

/** Whether a body moves by itself: what stands still is neither shimmed nor slid, and errs by nothing. */
export const moves = (standing: Standing, m: Motion): boolean =>
  standing.body.feet.some((f) => {
    const { x, y, z } = atFoot(m, standing, f)
    return Math.max(Math.abs(x), Math.abs(y), Math.abs(z)) > stands
  })

/** Whether a body moves in its holes. */
export const slides = (standing: Standing, m: Motion): boolean =>
  standing.body.feet.some((f) => {
    const { x, y } = atFoot(m, standing, f)
    return Math.max(Math.abs(x), Math.abs(y)) > stands
  })
