import type { AxisPoint, Body, Coupling, GrowthPoint, Machine, Pair, Room, Train } from './train'

function minus(value: number | undefined): number | undefined {
  return value === undefined ? undefined : 0 - value
}

function swapped(room: Room | undefined): Room | undefined {
  return room && [0 - room[1], 0 - room[0]]
}

function other(end: 'left' | 'right'): 'left' | 'right' {
  return end === 'left' ? 'right' : 'left'
}

function turnedBody<B extends Body>(b: B): B {
  return {
    ...b,
    feet: b.feet.map((f) => ({
      ...f,
      x: -f.x,
      y: minus(f.y),
      hole: f.hole && { ...f.hole, x: minus(f.hole.x), y: minus(f.hole.y) },
    })),
    restraints: b.restraints?.map((r) => ({
      ...r,
      x: -r.x,
      y: minus(r.y),
      axial: swapped(r.axial),
      side: swapped(r.side),
    })),
  }
}

function turnedGrowth(p: GrowthPoint): GrowthPoint {
  const axis = p.axis && other(p.axis)
  return { ...p, at: -p.at, axis, side: minus(p.side), axial: minus(p.axial) }
}

function turnedMachine(m: Machine): Machine {
  const point = (a: AxisPoint): AxisPoint => ({ ...a, y: minus(a.y) })
  return {
    ...turnedBody(m),
    axis:
      'left' in m.axis ? { left: point(m.axis.right), right: point(m.axis.left) } : point(m.axis),
    growth:
      m.growth &&
      Object.fromEntries(Object.entries(m.growth).map(([s, list]) => [s, list.map(turnedGrowth)])),
  }
}

/** Offsets keep y and turn z, slopes the other way round: left and right swap as y does. */
function turnedLine(l: { offset?: Pair | undefined; slope?: Pair | undefined }) {
  return {
    offset: l.offset && { y: l.offset.y, z: minus(l.offset.z) },
    slope: l.slope && { y: minus(l.slope.y), z: l.slope.z },
  }
}

function turnedSet(set: Coupling['found'][number]): Coupling['found'][number] {
  if (set.kind === 'line') return { ...set, at: -set.at, ...turnedLine(set) }
  const readings = set.readings.map(([h, v]): [number, number] => [h === 12 ? 12 : 12 - h, v])
  if (set.kind === 'rim') return { ...set, rides: other(set.rides), at: -set.at, readings }
  if (set.kind === 'face') return { ...set, rides: other(set.rides), readings }
  if (set.kind === 'spool') return { ...set, end: other(set.end), readings }
  return { ...set, readings }
}

function turnedCoupling(c: Coupling): Coupling {
  return {
    ...c,
    left: { ...c.right, plane: -c.right.plane },
    right: { ...c.left, plane: -c.left.plane },
    aim:
      c.aim &&
      Object.fromEntries(Object.entries(c.aim).map(([s, aim]) => [s, turnedLine(aim)] as const)),
    setting: c.setting && { ...c.setting, ...turnedLine(c.setting) },
    found: c.found.map(turnedSet),
  }
}

/** The same train seen from its other side: turned half round about the vertical. */
export function turned(train: Train): Train {
  return {
    ...train,
    machines: train.machines.map(turnedMachine).reverse(),
    skids: train.skids?.map(turnedBody),
    couplings: train.couplings.map(turnedCoupling).reverse(),
  }
}
