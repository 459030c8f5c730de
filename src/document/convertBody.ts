import type { FootDocument, MachineDocument, RestraintDocument, SkidDocument } from './schema'
import type { Door } from './unitConverter'
import type {
  AxisPoint,
  Body,
  Foot,
  FootRow,
  Freedom,
  GrowthPoint,
  Range,
  Restraint,
} from '../mechanics/train'

/** Feet nearer than this along x stand in one row (mm). */
export const sameX = 1e-6

/** A machine in engine units; `skid` is the index in bodies of what carries it. */
export function convertMachine(
  machine: MachineDocument,
  place: string,
  skid: number | undefined,
  door: Door,
): Body {
  const point = (axis: { y?: number | undefined; z: number }, at: string): AxisPoint => ({
    y: door.length(axis.y ?? 0, `${at}.y`),
    z: door.length(axis.z, `${at}.z`),
  })
  const { axis } = machine
  const twoAxes = 'left' in axis
  const base = door.length(machine.base ?? 0, `${place}.base`)
  return {
    ...convertCommon(machine, place, door),
    kind: 'machine',
    role: machine.role ?? 'other',
    ...(machine.speed === undefined ? {} : { speed: machine.speed }),
    ...(skid === undefined ? {} : { skid }),
    base: skid === undefined ? 0 : base,
    twoAxes,
    axis: twoAxes
      ? {
          left: point(axis.left, `${place}.axis.left`),
          right: point(axis.right, `${place}.axis.right`),
        }
      : { left: point(axis, `${place}.axis`), right: point(axis, `${place}.axis`) },
    growth: convertGrowth(machine, place, door),
  }
}

export function convertSkid(skid: SkidDocument, place: string, door: Door): Body {
  const noAxis = { y: 0, z: 0 }
  return {
    ...convertCommon(skid, place, door),
    kind: 'skid',
    role: 'skid',
    base: 0,
    twoAxes: false,
    axis: { left: noAxis, right: noAxis },
    growth: new Map(),
  }
}

function convertCommon(body: MachineDocument | SkidDocument, place: string, door: Door) {
  const feet = body.feet.map((foot, i) => convertFoot(foot, `${place}.feet[${i}]`, door))
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
    effort: door.fine(body.effort ?? 0, `${place}.effort`),
    ...(body.tilt === undefined ? {} : { tilt: body.tilt }),
    ...(body.mass === undefined ? {} : { mass: door.mass(body.mass) }),
    ...(body.jack === undefined ? {} : { jack: door.mass(body.jack) }),
    ...(body.level === undefined ? {} : { level: body.level }),
    feet,
    rows,
    restraints: (body.restraints ?? []).map((restraint, i) =>
      convertRestraint(restraint, `${place}.restraints[${i}]`, door),
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
  const wide = feet.some((foot) => Math.abs(foot.y - (feet[0]?.y ?? 0)) > sameX)
  return {
    rise: shim,
    pitch: shim && rows.length > 1,
    slide: side,
    yaw: side && rows.length > 1,
    axial,
    roll: shim && roll && wide,
  }
}

function convertFoot(foot: FootDocument, place: string, door: Door): Foot {
  const { pack, hole } = foot
  return {
    id: foot.id,
    place,
    x: door.length(foot.x, `${place}.x`),
    y: door.length(foot.y ?? 0, `${place}.y`),
    mayShim: foot.free?.shim ?? true,
    maySlide: foot.free?.side ?? true,
    ...(pack && {
      pack: {
        now: door.fine(pack.now, `${place}.pack.now`),
        min: door.fine(pack.min ?? 0, `${place}.pack.min`),
        ...(pack.max !== undefined && { max: door.fine(pack.max, `${place}.pack.max`) }),
      },
    }),
    ...(foot.lift !== undefined && { lift: door.fine(foot.lift, `${place}.lift`) }),
    ...(hole && {
      hole: {
        clearance: door.fine(hole.clearance, `${place}.hole.clearance`),
        x: door.fine(hole.x ?? 0, `${place}.hole.x`),
        y: door.fine(hole.y ?? 0, `${place}.hole.y`),
        centred: hole.x !== undefined || hole.y !== undefined,
      },
    }),
    ...(foot.soft !== undefined && { soft: door.fine(foot.soft, `${place}.soft`) }),
    ...(foot.gaps && {
      gaps: [
        door.fine(foot.gaps[0], `${place}.gaps[0]`),
        door.fine(foot.gaps[1], `${place}.gaps[1]`),
        door.fine(foot.gaps[2], `${place}.gaps[2]`),
        door.fine(foot.gaps[3], `${place}.gaps[3]`),
      ] as const,
    }),
  }
}

function footRows(feet: readonly Foot[]): FootRow[] {
  const order = feet.map((_, i) => i).sort((a, b) => (feet[a]?.x ?? 0) - (feet[b]?.x ?? 0) || a - b)
  const rows: { x: number; feet: number[] }[] = []
  for (const i of order) {
    const x = feet[i]?.x ?? 0
    const last = rows.at(-1)
    if (last !== undefined && x - last.x <= sameX) last.feet.push(i)
    else rows.push({ x, feet: [i] })
  }
  return rows
}

function convertRestraint(restraint: RestraintDocument, place: string, door: Door): Restraint {
  const range = (way: 'axial' | 'side' | 'rise'): Range | undefined => {
    const given = restraint[way]
    return (
      given && [
        door.fine(given[0], `${place}.${way}[0]`),
        door.fine(given[1], `${place}.${way}[1]`),
      ]
    )
  }
  const [axial, side, rise] = [range('axial'), range('side'), range('rise')]
  return {
    id: restraint.id,
    place,
    x: door.length(restraint.x, `${place}.x`),
    y: door.length(restraint.y ?? 0, `${place}.y`),
    z: door.length(restraint.z, `${place}.z`),
    ...(axial && { axial }),
    ...(side && { side }),
    ...(rise && { rise }),
  }
}

function convertGrowth(
  machine: MachineDocument,
  place: string,
  door: Door,
): ReadonlyMap<string, readonly GrowthPoint[]> {
  return new Map(
    Object.entries(machine.growth ?? {}).map(([state, points]) => [
      state,
      points.map((point, i) => {
        const at = `${place}.growth.${state}[${i}]`
        const fine = (way: 'rise' | 'side' | 'axial') => {
          const given = point[way]
          return given === undefined ? undefined : door.fine(given, `${at}.${way}`)
        }
        const [rise, side, axial] = [fine('rise'), fine('side'), fine('axial')]
        const heat = point.heat && door.heat(point.heat, `${at}.heat`)
        return {
          at: door.length(point.at, `${at}.at`),
          axis: point.axis ?? ('both' as const),
          ...((rise !== undefined || heat !== undefined) && { rise: (rise ?? 0) + (heat ?? 0) }),
          ...(side !== undefined && { side }),
          ...(axial !== undefined && { axial }),
          u: door.fine(point.u ?? 0, `${at}.u`),
        }
      }),
    ]),
  )
}
