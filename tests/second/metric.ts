import type { LeftOut } from './terms'
import {
  fineFactor,
  lengthFactor,
  type AxisPoint,
  type Body,
  type Coupling,
  type Foot,
  type GrowthPoint,
  type Pair,
  type Reading,
  type ReadingSet,
  type Restraint,
  type Room,
  type Train,
} from './train'

type Scale = (value: number) => number

interface Scales {
  length: Scale
  fine: Scale
}

/** Converts what is there and leaves what is missing missing. */
function maybe(value: number | undefined, scale: Scale): number | undefined {
  return value === undefined ? undefined : scale(value)
}

function room(range: Room | undefined, { fine }: Scales): Room | undefined {
  return range && [fine(range[0]), fine(range[1])]
}

function pair(p: Pair | undefined, { fine }: Scales): Pair | undefined {
  return p && { y: maybe(p.y, fine), z: maybe(p.z, fine) }
}

function foot(f: Foot, { length, fine }: Scales): Foot {
  return {
    ...f,
    x: length(f.x),
    y: maybe(f.y, length),
    pack: f.pack && {
      now: fine(f.pack.now),
      min: maybe(f.pack.min, fine),
      max: maybe(f.pack.max, fine),
    },
    lift: maybe(f.lift, fine),
    hole: f.hole && {
      clearance: fine(f.hole.clearance),
      x: maybe(f.hole.x, fine),
      y: maybe(f.hole.y, fine),
    },
  }
}

function restraint(r: Restraint, by: Scales): Restraint {
  return {
    ...r,
    x: by.length(r.x),
    y: maybe(r.y, by.length),
    z: by.length(r.z),
    axial: room(r.axial, by),
    side: room(r.side, by),
    rise: room(r.rise, by),
  }
}

function body<B extends Body>(b: B, by: Scales): B {
  return {
    ...b,
    feet: b.feet.map((f) => foot(f, by)),
    restraints: b.restraints?.map((r) => restraint(r, by)),
  }
}

function growth(p: GrowthPoint, { length, fine }: Scales): GrowthPoint {
  return {
    ...p,
    at: length(p.at),
    rise: maybe(p.rise, fine),
    side: maybe(p.side, fine),
    axial: maybe(p.axial, fine),
    heat: p.heat && { ...p.heat, height: length(p.heat.height) },
  }
}

function found(set: ReadingSet, by: Scales): ReadingSet {
  const { length, fine } = by
  const u = maybe(set.u, fine)
  if (set.kind === 'line') return { ...set, at: length(set.at), offset: pair(set.offset, by), u }
  const readings = set.readings.map(([hour, value]): Reading => [hour, fine(value)])
  if (set.kind === 'gap') return { ...set, diameter: length(set.diameter), readings, u }
  const sag = maybe(set.sag, fine)
  if (set.kind === 'rim') return { ...set, at: length(set.at), sag, readings, u }
  return { ...set, diameter: length(set.diameter), sag, readings, u }
}

function coupling(c: Coupling, by: Scales): Coupling {
  const { length, fine } = by
  const aims = Object.entries(c.aim ?? {}).map(
    ([state, aim]) => [state, { ...aim, offset: pair(aim.offset, by) }] as const,
  )
  return {
    ...c,
    left: { ...c.left, plane: length(c.left.plane) },
    right: { ...c.right, plane: length(c.right.plane) },
    tolerance: { ...c.tolerance, offset: maybe(c.tolerance.offset, fine) },
    aim: c.aim && Object.fromEntries(aims),
    setting: c.setting && { ...c.setting, offset: pair(c.setting.offset, by) },
    axial: c.axial && {
      found: length(c.axial.found),
      want: length(c.axial.want),
      tolerance: length(c.axial.tolerance),
    },
    found: c.found.map((set) => found(set, by)),
  }
}

/**
 * The same train with every length and every fine quantity converted. Milliradians and degrees
 * stay: a slope is the same number in every unit, and an expansion is per degree as typed.
 */
export function converted(train: Train, by: Scales): Train {
  const grown = (lists: Record<string, GrowthPoint[]>) =>
    Object.fromEntries(
      Object.entries(lists).map(([state, list]) => [state, list.map((p) => growth(p, by))]),
    )
  const axisPoint = (a: AxisPoint): AxisPoint => ({ y: maybe(a.y, by.length), z: by.length(a.z) })
  return {
    ...train,
    machines: train.machines.map((m) => ({
      ...body(m, by),
      base: maybe(m.base, by.length),
      axis:
        'left' in m.axis
          ? { left: axisPoint(m.axis.left), right: axisPoint(m.axis.right) }
          : axisPoint(m.axis),
      growth: m.growth && grown(m.growth),
    })),
    skids: train.skids?.map((s) => body(s, by)),
    couplings: train.couplings.map((c) => coupling(c, by)),
    plan: train.plan && { ...train.plan, reserve: maybe(train.plan.reserve, by.fine) },
  }
}

/** The same train in millimetres (lengths) and micrometres (fine quantities). */
export function metric(train: Train, leaveOut?: LeftOut): Train {
  const length = lengthFactor(train, leaveOut)
  const fine = fineFactor(train, leaveOut)
  const inMetric = converted(train, { length: (v) => v * length, fine: (v) => v * fine })
  return { ...inMetric, units: { ...train.units, length: 'mm', fine: 'um' } }
}
