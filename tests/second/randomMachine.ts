import type { Random } from './random'
import type { Streams } from './streams'
import type { Body, Foot, Machine, Skid } from './train'

/** Feet in rows between two x: mostly pairs, some single feet, some rows off the middle. */
function randomFeet(random: Random, rows: number, from: number, to: number): Foot[] {
  const half = random.between(200, 700)
  const lean = random.chance(0.15) ? random.about(60) : 0
  const feet: Foot[] = []
  for (let row = 0; row < rows; row++) {
    const part = rows === 1 ? 0.5 : row / (rows - 1)
    const x = from + (to - from) * part
    const single = random.chance(0.08)
    const ys = single ? [random.chance(0.5) ? 0 : half + lean] : [half + lean, -half + lean]
    ys.forEach((y, i) => {
      feet.push({ id: `${row + 1}${'ab'[i] ?? ''}`, x, y: Math.round(y) })
    })
  }
  return feet
}

function flags(streams: Streams, id: string): Body['free'] {
  const free: NonNullable<Body['free']> = {}
  if (streams.of('free', id, 'shim').chance(0.05)) free.shim = false
  if (streams.of('free', id, 'side').chance(0.05)) free.side = false
  if (streams.of('free', id, 'axial').chance(0.35)) free.axial = true
  if (streams.of('free', id, 'roll').chance(0.35)) free.roll = true
  return Object.keys(free).length > 0 ? free : undefined
}

/** A foot that may not be shimmed or may not slide; seldom two of them. */
function keyFeet(streams: Streams, { id, feet }: Body): void {
  const random = streams.of('key', id)
  if (!random.chance(0.12)) return
  const key = feet[random.whole(0, feet.length - 1)]
  if (!key) return
  key.free = random.chance(0.5) ? { shim: false } : { side: false }
  if (random.chance(0.15)) key.free = { shim: false, side: false }
}

function hold(streams: Streams, body: Body, held: number): void {
  const anchored = streams.of('anchored', body.id)
  if (anchored.chance(0.07)) {
    body.anchored = 'dowelled and piped'
    if (anchored.chance(0.5)) body.held = true
    if (anchored.chance(0.4)) body.feet = []
  } else if (streams.of('held', body.id).chance(held)) {
    body.held = true
  }
}

function weigh(streams: Streams, body: Body): void {
  const random = streams.of('weight', body.id)
  if (random.chance(0.25)) body.weight = random.pick([0.5, 2, 3, 5])
  if (random.chance(0.01)) body.weight = 0
}

/** A machine between two x (mm), without limits: geometry, freedom and what is held. */
export function randomMachine(streams: Streams, id: string, from: number, to: number): Machine {
  const random = streams.of('machine', id)
  const inset = (to - from) * random.between(0.08, 0.25)
  const rows = random.pick([1, 2, 2, 2, 2, 2, 2, 3, 3, 4] as const)
  const z = Math.round(random.between(300, 1000))
  const y = random.chance(0.1) ? Math.round(random.about(40)) : 0
  const gearbox = random.chance(0.35)
  const drop = Math.round(random.about(200))
  const machine: Machine = {
    id,
    name: `Machine ${id}`,
    axis: gearbox
      ? { left: { y, z }, right: { y: Math.round(random.about(350)), z: Math.max(50, z + drop) } }
      : y === 0
        ? { z }
        : { y, z },
    feet: randomFeet(random, rows, from + inset, to - inset),
    free: flags(streams, id),
  }
  keyFeet(streams, machine)
  weigh(streams, machine)
  return machine
}

/** Decides what is held once it is known which machines stand on a skid. */
export function holdSome(streams: Streams, machines: Machine[], skids: Skid[]): void {
  const many = streams.of('held').chance(0.15) ? 0.6 : 0.22
  for (const machine of machines) {
    const onSkid = skids.some((s) => s.carries.includes(machine.id))
    hold(streams, machine, onSkid ? 0.5 : many)
  }
  for (const skid of skids) hold(streams, skid, 0.2)
}

/** A skid under one to three neighbours. */
export function randomSkid(streams: Streams, id: string, machines: Machine[]): Skid {
  const random = streams.of('skid', id)
  const base = Math.round(random.between(150, 700))
  const xs = machines.flatMap((m) => m.feet.map((f) => f.x))
  const carried = machines.map((m) => m.id)
  for (const machine of machines) machine.base = base
  const rows = random.pick([1, 2, 2, 2, 3, 3, 4] as const)
  const low = Math.min(...xs) - random.between(50, 300)
  const high = Math.max(...xs) + random.between(50, 300)
  const skid: Skid = {
    id,
    name: `Base of ${machines.map((m) => m.id).join(' and ')}`,
    carries: carried,
    feet: randomFeet(random, rows, low, high),
    free: flags(streams, id),
  }
  keyFeet(streams, skid)
  weigh(streams, skid)
  return skid
}
