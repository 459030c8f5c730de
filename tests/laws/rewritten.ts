import type {
  Aim,
  AxisPoint,
  Body,
  Coupling,
  Foot,
  GrowthPoint,
  Pair,
  Reading,
  ReadingSet,
  Restraint,
  Room,
  Train,
} from '../second/train'

/** What becomes of each sort of number when a train is written from another point of view. */
export interface Rewriting {
  /** Positions along and across. */
  readonly x: (value: number) => number
  readonly y: (value: number) => number
  /** Sign of a displacement along and across. */
  readonly axial: 1 | -1
  readonly side: 1 | -1
  /** Signs of a misalignment's offset and slope, across and up. */
  readonly offset: { readonly y: 1 | -1; readonly z: 1 | -1 }
  readonly slope: { readonly y: 1 | -1; readonly z: 1 | -1 }
  readonly hour: (hour: number) => number
}

/** Times a sign, without a minus on a zero. */
const turn = (value: number, sign: 1 | -1): number => (sign === 1 ? value : 0 - value)

const maybe = (value: number | undefined, change: (value: number) => number): number | undefined =>
  value === undefined ? undefined : change(value)

const room = (range: Room | undefined, sign: 1 | -1): Room | undefined =>
  range && (sign === 1 ? range : [turn(range[1], -1), turn(range[0], -1)])

const pair = (p: Pair | undefined, signs: { y: 1 | -1; z: 1 | -1 }): Pair | undefined =>
  p && { y: maybe(p.y, (v) => turn(v, signs.y)), z: maybe(p.z, (v) => turn(v, signs.z)) }

/** The same train with every number rewritten; its order and its ends stay. */
export function rewritten(train: Train, by: Rewriting): Train {
  const foot = (f: Foot): Foot => ({
    ...f,
    x: by.x(f.x),
    y: maybe(f.y, by.y),
    hole: f.hole && {
      ...f.hole,
      x: maybe(f.hole.x, (v) => turn(v, by.axial)),
      y: maybe(f.hole.y, (v) => turn(v, by.side)),
    },
  })
  const restraint = (r: Restraint): Restraint => ({
    ...r,
    x: by.x(r.x),
    y: maybe(r.y, by.y),
    axial: room(r.axial, by.axial),
    side: room(r.side, by.side),
  })
  const body = <B extends Body>(b: B): B => ({
    ...b,
    feet: b.feet.map(foot),
    restraints: b.restraints?.map(restraint),
  })
  const axisPoint = (a: AxisPoint): AxisPoint => ({ ...a, y: maybe(a.y, by.y) })
  const growth = (p: GrowthPoint): GrowthPoint => ({
    ...p,
    at: by.x(p.at),
    side: maybe(p.side, (v) => turn(v, by.side)),
    axial: maybe(p.axial, (v) => turn(v, by.axial)),
  })
  const lined = <L extends Aim>(l: L): L => ({
    ...l,
    offset: pair(l.offset, by.offset),
    slope: pair(l.slope, by.slope),
  })
  const set = (s: ReadingSet): ReadingSet => {
    if (s.kind === 'line') return { ...lined(s), at: by.x(s.at) }
    const readings = s.readings.map(([hour, value]): Reading => [by.hour(hour), value])
    return s.kind === 'rim' ? { ...s, at: by.x(s.at), readings } : { ...s, readings }
  }
  const coupling = (c: Coupling): Coupling => ({
    ...c,
    left: { ...c.left, plane: by.x(c.left.plane) },
    right: { ...c.right, plane: by.x(c.right.plane) },
    aim: c.aim && each(c.aim, lined),
    setting: c.setting && lined(c.setting),
    found: c.found.map(set),
  })
  return {
    ...train,
    machines: train.machines.map((m) => ({
      ...body(m),
      axis:
        'left' in m.axis
          ? { left: axisPoint(m.axis.left), right: axisPoint(m.axis.right) }
          : axisPoint(m.axis),
      growth: m.growth && each(m.growth, (points) => points.map(growth)),
    })),
    skids: train.skids?.map(body),
    couplings: train.couplings.map(coupling),
  }
}

function each<V>(record: Record<string, V>, change: (value: V) => V): Record<string, V> {
  return Object.fromEntries(
    Object.entries(record).map(([key, value]) => [key, change(value)] as const),
  )
}
