import { tol } from '../mechanics/tolerances'
import type {
  FootDocument,
  GrowthPointDocument,
  MachineDocument,
  RestraintDocument,
  SkidDocument,
} from './schema'
import { convertStator } from './convertStator'
import { heatRise } from './heat'
import type {
  AxisPoint,
  Body,
  Foot,
  FootRow,
  Freedom,
  GrowthPoint,
  Restraint,
  State,
} from '../mechanics/train'

/**
 * A machine as the engine has it, from a document in engine units.
 * @param skid index in bodies of what carries it
 * @param states those that the document lists
 */
export function convertMachine(
  machine: MachineDocument,
  place: string,
  skid: number | undefined,
  states: readonly State[],
): Body {
  const point = (axis: { y?: number | undefined; z: number }): AxisPoint => ({
    y: axis.y ?? 0,
    z: axis.z,
  })
  const { axis } = machine
  const twoAxes = 'left' in axis
  const base = machine.base ?? 0
  return {
    ...convertCommon(machine, place),
    kind: 'machine',
    role: machine.role ?? 'other',
    ...(machine.speed === undefined ? {} : { speed: machine.speed }),
    ...(skid === undefined ? {} : { skid }),
    base: skid === undefined ? 0 : base,
    twoAxes,
    axis: twoAxes
      ? {
          left: point(axis.left),
          right: point(axis.right),
        }
      : { left: point(axis), right: point(axis) },
    ...convertStator(machine.stator),
    ...convertGrowth(machine, states),
  }
}

export function convertSkid(skid: SkidDocument, place: string): Body {
  const noAxis = { y: 0, z: 0 }
  return {
    ...convertCommon(skid, place),
    kind: 'skid',
    role: 'skid',
    base: 0,
    twoAxes: false,
    axis: { left: noAxis, right: noAxis },
    growth: new Map(),
    growthBeside: new Map(),
    growthBetween: new Map(),
  }
}

function convertCommon(body: MachineDocument | SkidDocument, place: string) {
  const feet = body.feet.map((foot, i) => convertFoot(foot, `${place}.feet[${i}]`))
  const rows = footRows(feet)
  const held = body.held === true || body.anchored !== undefined
  return {
    id: body.id,
    name: body.name,
    place,
    held,
    ...(body.anchored === undefined ? {} : { anchored: body.anchored }),
    may: freedomOf(body, feet, rows),
    x0: feet.length === 0 ? 0 : feet.reduce((sum, foot) => sum + foot.x, 0) / feet.length,
    weight: body.weight ?? 1,
    effort: (body.pins ?? []).reduce(
      (sum, { now = 'in', effort = 0 }) => (now === 'in' ? sum + effort : sum),
      body.effort ?? 0,
    ),
    pins: (body.pins ?? []).map(({ id, kind = 'dowel', now = 'in' }) => ({ id, kind, now })),
    ...(body.tilt === undefined ? {} : { tilt: body.tilt }),
    ...(body.mass === undefined ? {} : { mass: body.mass }),
    ...(body.jack === undefined ? {} : { jack: body.jack }),
    ...(body.level === undefined ? {} : { level: body.level }),
    feet,
    rows,
    restraints: (body.restraints ?? []).map((restraint, i) =>
      convertRestraint(restraint, `${place}.restraints[${i}]`),
    ),
  }
}

/** A body on one row of feet neither pitches nor yaws; one on a single line of feet does not roll. */
function freedomOf(
  body: MachineDocument | SkidDocument,
  feet: readonly Foot[],
  rows: readonly FootRow[],
): Freedom {
  const { shim = true, side = true, axial = false, roll = false } = body.free ?? {}
  const wide = feet.some((foot) => Math.abs(foot.y - (feet[0]?.y ?? 0)) > tol.sameX)
  return {
    rise: shim,
    pitch: shim && rows.length > 1,
    slide: side,
    yaw: side && rows.length > 1,
    axial,
    roll: shim && roll && wide,
  }
}

function convertFoot(foot: FootDocument, place: string): Foot {
  const { pack, hole } = foot
  return {
    id: foot.id,
    place,
    x: foot.x,
    y: foot.y ?? 0,
    mayShim: foot.free?.shim ?? true,
    maySlide: foot.free?.side ?? true,
    ...(pack && {
      pack: {
        now: pack.now,
        min: pack.min ?? 0,
        ...(pack.max !== undefined && { max: pack.max }),
        ...(pack.plates && { plates: pack.plates }),
      },
    }),
    ...(foot.lift !== undefined && { lift: foot.lift }),
    ...(hole && {
      hole: {
        clearance: hole.clearance,
        x: hole.x ?? 0,
        y: hole.y ?? 0,
        centred: hole.x !== undefined || hole.y !== undefined,
        ...(hole.u !== undefined && { u: hole.u }),
      },
    }),
    ...(foot.soleplate !== undefined && { soleplate: foot.soleplate }),
    ...(foot.soft !== undefined && { soft: foot.soft }),
    ...(foot.gaps && { gaps: foot.gaps }),
    ...(foot.torque && { torque: foot.torque }),
  }
}

function footRows(feet: readonly Foot[]): FootRow[] {
  const order = feet.map((_, i) => i).sort((a, b) => (feet[a]?.x ?? 0) - (feet[b]?.x ?? 0) || a - b)
  const rows: { x: number; feet: number[] }[] = []
  for (const i of order) {
    const x = feet[i]?.x ?? 0
    const last = rows.at(-1)
    if (last !== undefined && x - last.x <= tol.sameX) last.feet.push(i)
    else rows.push({ x, feet: [i] })
  }
  return rows
}

function convertRestraint(restraint: RestraintDocument, place: string): Restraint {
  const { axial, side, rise } = restraint
  return {
    id: restraint.id,
    place,
    x: restraint.x,
    y: restraint.y ?? 0,
    z: restraint.z,
    ...(axial && { axial }),
    ...(side && { side }),
    ...(rise && { rise }),
  }
}

/** Growth by state, apart by whether points count; where none do, a state between two others is made of those. */
function convertGrowth(
  machine: MachineDocument,
  states: readonly State[],
): Pick<Body, 'growth' | 'growthBeside' | 'growthBetween'> {
  const points = (counts: boolean) =>
    new Map(
      Object.entries(machine.growth ?? {}).flatMap(([state, all]) => {
        const some = all.filter(({ use = true }) => use === counts)
        return some.length > 0 ? [[state, some.map(convertPoint)] as const] : []
      }),
    )
  const growth = points(true)
  const between = states.flatMap(({ id, between }) => {
    if (!between || growth.has(id)) return []
    const parts = [
      { state: between.from, weight: 1 - between.part },
      { state: between.to, weight: between.part },
    ]
    return [[id, parts] as const]
  })
  return { growth, growthBeside: points(false), growthBetween: new Map(between) }
}

/** A quantity that is given as an interval counts as its middle, with half the width beside it. */
export function convertPoint(point: GrowthPointDocument): GrowthPoint {
  const { at, axis = 'both' as const, heat, u, range, source, when, by } = point
  const rise = heat ? (point.rise ?? 0) + heatRise(heat) : (point.rise ?? middle(range?.rise))
  const side = point.side ?? middle(range?.side)
  const axial = point.axial ?? middle(range?.axial)
  return {
    at,
    axis,
    ...(rise !== undefined && { rise }),
    ...(side !== undefined && { side }),
    ...(axial !== undefined && { axial }),
    ...(u !== undefined && { u }),
    heated: heat !== undefined,
    half: {
      ...(range?.rise && { rise: halfWidth(range.rise) }),
      ...(range?.side && { side: halfWidth(range.side) }),
      ...(range?.axial && { axial: halfWidth(range.axial) }),
    },
    source: {
      kind: heat ? 'heat' : (source ?? 'given'),
      ...(when !== undefined && { when }),
      ...(by !== undefined && { by }),
    },
  }
}

type Interval = readonly [low: number, high: number]
const middle = (interval: Interval | undefined): number | undefined =>
  interval && (interval[0] + interval[1]) / 2
const halfWidth = ([low, high]: Interval): number => (high - low) / 2
