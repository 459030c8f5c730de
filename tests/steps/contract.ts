/**
 * Limits and readings as the train file's contract has them, worked out from the document itself.
 * Written apart from the engine: it imports nothing from it.
 */
import { footLimitList } from '../second/footLimits'
import type { Foot } from '../second/train'

export interface Move {
  tx: number
  ty: number
  tz: number
  sy: number
  sz: number
  roll: number
}

export interface BodyFile {
  id: string
  name: string
  role?: string
  held?: boolean
  anchored?: string
  base?: number
  axis?: Axis | { left: Axis; right: Axis }
  tilt?: number
  feet: Foot[]
  restraints?: {
    id: string
    x: number
    y?: number
    z: number
    axial?: [number, number]
    side?: [number, number]
    rise?: [number, number]
  }[]
}

interface Axis {
  y?: number
  z: number
}

export interface SetFile {
  kind: 'rim' | 'face' | 'gap' | 'spool' | 'line'
  rides?: 'left' | 'right'
  at?: number
  diameter?: number
  face?: 'front' | 'back'
  end?: 'left' | 'right'
  sag?: number
  readings?: [number, number][]
}

export interface TrainFile {
  units: { length: 'mm' | 'in'; fine: 'um' | 'mm' | 'mil' }
  machines: BodyFile[]
  skids?: (BodyFile & { carries: string[] })[]
  couplings: {
    id: string
    left: { machine: string; plane: number }
    right: { machine: string; plane: number }
    found: SetFile[]
    axial?: { found: number }
  }[]
  plan?: { reserve?: number; stage?: number; slip?: number }
}

/** Fine units in one mrad times one length unit. */
export function slopeScale(file: TrainFile): number {
  const um = { um: 1, mm: 1000, mil: 25.4 }[file.units.fine]
  return (file.units.length === 'mm' ? 1 : 25.4) / um
}

export const bodiesOf = (file: TrainFile): BodyFile[] => [...file.machines, ...(file.skids ?? [])]
const skidUnder = (file: TrainFile, id: string) =>
  (file.skids ?? []).find(({ carries }) => carries.includes(id))

const still: Move = { tx: 0, ty: 0, tz: 0, sy: 0, sz: 0, roll: 0 }
export type Standing = ReadonlyMap<string, Move>
export const standingOf = (standing: Standing, id: string): Move => standing.get(id) ?? still

/** Displacement [along, aside, up] of a point by one body's own motion. */
export function carriedBy(
  file: TrainFile,
  body: BodyFile,
  move: Move,
  point: { x: number; y: number; z: number },
): [number, number, number] {
  const k = slopeScale(file)
  const x0 = body.feet.reduce((sum, { x }) => sum + x, 0) / Math.max(1, body.feet.length)
  const arm = point.x - x0
  return [
    move.tx - k * (move.sy * point.y + move.sz * point.z),
    move.ty + k * (move.sy * arm - move.roll * point.z),
    move.tz + k * (move.sz * arm + move.roll * point.y),
  ]
}

/** The same by its own motion and its skid's. */
function carriedInAll(
  file: TrainFile,
  body: BodyFile,
  standing: Standing,
  point: { x: number; y: number; z: number },
): [number, number, number] {
  const own = carriedBy(file, body, standingOf(standing, body.id), point)
  const skid = skidUnder(file, body.id)
  if (!skid) return own
  const under = carriedBy(file, skid, standingOf(standing, skid.id), {
    ...point,
    z: (body.base ?? 0) + point.z,
  })
  return [own[0] + under[0], own[1] + under[1], own[2] + under[2]]
}

/** Most that any limit is passed by where all bodies stand (fine units), and which; but for limits of feet that do not count there. */
export function worstPassed(
  file: TrainFile,
  standing: Standing,
  but: readonly string[] = [],
): { by: number; what: string } {
  let worst = { by: 0, what: '' }
  const note = (by: number, what: string) => {
    if (by > worst.by) worst = { by, what }
  }
  const k = slopeScale(file)
  for (const body of bodiesOf(file)) {
    const own = standingOf(standing, body.id)
    const fixed = body.held === true || body.anchored !== undefined
    if (fixed) note(Math.max(...Object.values(own).map(Math.abs)), `${body.id} is held`)
    for (const foot of body.feet) {
      const [dx, dy, dz] = carriedBy(file, body, own, { x: foot.x, y: foot.y ?? 0, z: 0 })
      const at = `${body.id} foot ${foot.id}`
      const moved = { y: dy, z: dz }
      for (const { name, band } of footLimitList) {
        const kept = but.includes(name) ? undefined : band?.(foot)
        if (kept)
          note(Math.max(kept.low - moved[kept.way], moved[kept.way] - kept.high), `${at} ${name}`)
      }
      if (foot.hole) {
        const { clearance, x = 0, y = 0 } = foot.hole
        const radius = Math.max(clearance / 2 - (file.plan?.reserve ?? 0), Math.hypot(x, y))
        note(Math.hypot(x + dx, y + dy) - radius, `${at} hole`)
      }
    }
    for (const point of body.restraints ?? []) {
      const moved = carriedInAll(file, body, standing, { x: point.x, y: point.y ?? 0, z: point.z })
      for (const [i, room] of [point.axial, point.side, point.rise].entries())
        if (room)
          note(
            Math.max(room[0] - (moved[i] ?? 0), (moved[i] ?? 0) - room[1]),
            `${body.id} ${point.id}`,
          )
    }
    if (body.tilt !== undefined) {
      const skid = skidUnder(file, body.id)
      const pitch = own.sz + (skid ? standingOf(standing, skid.id).sz : 0)
      const reach = Math.max(
        1,
        ...body.feet.map((f) =>
          Math.abs(f.x - body.feet.reduce((s, { x }) => s + x, 0) / body.feet.length),
        ),
      )
      note((Math.abs(pitch) - body.tilt) * k * reach, `${body.id} tilt`)
    }
  }
  for (const { by, what } of meeting(file, standing)) note(by, what)
  return worst
}

/** Fine units in one length unit. */
const lengthScale = (file: TrainFile): number =>
  ({ mm: 1, in: 25.4 })[file.units.length] / { um: 1e-3, mm: 1, mil: 0.0254 }[file.units.fine]

/** How far each coupling's shaft ends stand into each other (fine units); nothing where their distance is not entered. */
function meeting(file: TrainFile, standing: Standing): { by: number; what: string }[] {
  return file.couplings.flatMap(({ id, left, right, axial }) => {
    if (!axial || axial.found <= 0) return []
    const along = (end: { machine: string; plane: number }, side: 'left' | 'right') => {
      const body = file.machines.find((machine) => machine.id === end.machine)
      if (!body?.axis) throw new Error(`no machine ${end.machine}`)
      const axis = 'left' in body.axis ? body.axis[side] : body.axis
      const point = { x: end.plane, y: axis.y ?? 0, z: axis.z }
      return carriedInAll(file, body, standing, point)[0]
    }
    const apart = axial.found * lengthScale(file) + along(right, 'left') - along(left, 'right')
    return [{ by: -apart, what: `${id} shaft ends` }]
  })
}

/** Change of a coupling's misalignment: offset at an x and slope, [aside, up]. */
export function changeAt(
  file: TrainFile,
  index: number,
  standing: Standing,
  x: number,
): { offset: [number, number]; slope: [number, number] } {
  const coupling = file.couplings[index]
  if (!coupling) throw new Error(`no coupling ${index}`)
  const end = (id: string, side: 'left' | 'right', at: number): [number, number] => {
    const body = file.machines.find((machine) => machine.id === id)
    if (!body?.axis) throw new Error(`no machine ${id}`)
    const axis = 'left' in body.axis ? body.axis[side] : body.axis
    const moved = carriedInAll(file, body, standing, { x: at, y: axis.y ?? 0, z: axis.z })
    return [moved[1], moved[2]]
  }
  const apart = (at: number): [number, number] => {
    const l = end(coupling.left.machine, 'right', at)
    const r = end(coupling.right.machine, 'left', at)
    return [r[0] - l[0], r[1] - l[1]]
  }
  const [here, there] = [apart(x), apart(x + 1)]
  return { offset: here, slope: [there[0] - here[0], there[1] - here[1]] }
}

/** What a sweep would show at an hour but for its zero, by the line d(x) of the coupling (offset and slope in fine units a length). */
export function sweepAt(
  set: SetFile,
  planes: { p: number; q: number },
  line: (x: number) => { offset: [number, number]; slope: [number, number] },
  hour: number,
): number {
  const angle = (hour * Math.PI) / 6
  const [uy, uz] = [Math.sin(angle), Math.cos(angle)]
  const dot = ([y, z]: [number, number]) => y * uy + z * uz
  const sag = (set.sag ?? 0) * uz
  const half = (set.diameter ?? 0) / 2
  const span = planes.q - planes.p
  switch (set.kind) {
    case 'rim':
      return (set.rides === 'right' ? 1 : -1) * dot(line(set.at ?? 0).offset) + sag
    case 'face':
      return (set.face === 'back' ? -1 : 1) * half * dot(line(0).slope) + sag
    case 'gap':
      return -half * dot(line(0).slope)
    case 'spool':
      return set.end === 'left'
        ? (half * dot(line(planes.q).offset)) / span + sag
        : (-half * dot(line(planes.p).offset)) / span + sag
    case 'line':
      return NaN
  }
}
