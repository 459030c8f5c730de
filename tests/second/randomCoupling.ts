import { growthAt } from './growth'
import { axisMoved, machineOf, type HiddenMotions } from './hiddenMotion'
import type { Random } from './random'
import { midSpan } from './reading'
import type { Streams } from './streams'
import type { Aim, Coupling, Machine, State } from './train'

/** A line of misalignment: offset at mid-span (um) and slope (mrad), y and z. */
export interface HiddenLine {
  offset: { y: number; z: number }
  slope: { y: number; z: number }
}

/** What surrounds a coupling: the machines, how they grow, what would put them right. */
export interface Scene {
  share: number
  /** Whether round tolerances may come: without circles answers agree more closely. */
  circles: boolean
  machines: Machine[]
  states: State[]
  motions: HiddenMotions
}

function aims(streams: Streams, id: string, states: State[]): Record<string, Aim> | undefined {
  const chosen = states.filter((state) => streams.of('aim', id, state.id).chance(0.5))
  if (!streams.of('aim', id).chance(0.3) || chosen.length === 0) return undefined
  return Object.fromEntries(
    chosen.map((state): [string, Aim] => {
      const random = streams.of('aim', id, state.id)
      const size = () => Math.round(random.about(60))
      const slope = () => Number(random.about(0.15).toFixed(3))
      const aim: Aim = {}
      if (random.chance(0.8))
        aim.offset = random.chance(0.7) ? { y: size(), z: size() } : { z: size() }
      if (!aim.offset || random.chance(0.6))
        aim.slope = random.chance(0.7) ? { y: slope(), z: slope() } : { y: slope() }
      return [state.id, aim]
    }),
  )
}

/**
 * A maker's cold setting now and then: near what growth asks for and used in its place, or one that
 * only stands beside it and must change nothing.
 */
function coldSetting(dice: Random, c: Coupling, asked: HiddenLine): void {
  if (!dice.chance(0.25)) return
  const fine = (v: number) => Math.round(v + dice.about(15))
  const slope = (v: number) => Number((v + dice.about(0.04)).toFixed(3))
  c.setting = {
    offset: { y: fine(asked.offset.y), z: fine(asked.offset.z) },
    slope: { y: slope(asked.slope.y), z: slope(asked.slope.z) },
    from: 'the maker',
  }
  if (dice.chance(0.15)) c.setting.slope = { z: slope(asked.slope.z) }
  if (dice.chance(0.4)) {
    c.setting.offset = { y: fine(300), z: fine(-400) }
    return
  }
  c.setting.use = true
  c.setting.why = 'measured on the test stand'
  c.aim = undefined
}

/** What growth and aims add to the misalignment in one state. */
function shift(scene: Scene, c: Coupling, state: State, axis: 'y' | 'z'): [number, number] {
  const m = midSpan(c)
  const at = (x: number) => {
    const right = growthAt(scene.states, machineOf(scene, c.right.machine), 'left', state.id, x)[
      axis
    ]
    return (
      right - growthAt(scene.states, machineOf(scene, c.left.machine), 'right', state.id, x)[axis]
    )
  }
  const aim = c.aim?.[state.id]
  return [
    at(m) - (aim?.offset?.[axis] ?? 0),
    (at(m + 500) - at(m - 500)) / 1000 - (aim?.slope?.[axis] ?? 0),
  ]
}

function middle(values: number[]): number {
  return (Math.max(...values) + Math.min(...values)) / 2
}

function halfSpread(values: number[]): number {
  return (Math.max(...values) - Math.min(...values)) / 2
}

/** Tolerances that the changes between states use up to a part of, drawn at random. */
function tolerances(
  streams: Streams,
  c: Coupling,
  { share, circles }: Scene,
  offsetSpread: number,
  slopeSpread: number,
): void {
  const random = streams.of('tolerance', c.id)
  const span = c.right.plane - c.left.plane
  const used = share * (random.chance(0.1) ? random.between(0.8, 1.1) : random.between(0.2, 0.8))
  const offset = Math.round(Math.max(15, offsetSpread / used))
  const angle = Number(Math.max(0.1, slopeSpread / used).toFixed(3))
  const t: Coupling['tolerance'] = {}
  const flexible = span > 0 && random.chance(0.65)
  if (flexible) {
    const need = Math.max(0.15, (offsetSpread / span + slopeSpread / 2) / used)
    t.flex = Number(need.toFixed(3))
  }
  if (!flexible || random.chance(0.3)) {
    const which = random.pick(['both', 'both', 'both', 'offset', 'angle'])
    if (which !== 'angle') t.offset = offset
    if (which !== 'offset') t.angle = angle
  }
  const shape = streams.of('shape', c.id)
  const [round, box] = [shape.chance(0.5), shape.chance(0.3)]
  if (circles && round) t.shape = 'round'
  else if (box) t.shape = 'box'
  c.tolerance = t
}

function axialGap(random: Random, scene: Scene, c: Coupling): void {
  const right = machineOf(scene, c.right.machine)
  const left = machineOf(scene, c.left.machine)
  const grown = scene.states.map(
    (s) =>
      growthAt(scene.states, right, 'left', s.id, c.right.plane).x -
      growthAt(scene.states, left, 'right', s.id, c.left.plane).x,
  )
  const moved =
    axisMoved(scene.motions, right, 'left', c.right.plane).x -
    axisMoved(scene.motions, left, 'right', c.left.plane).x
  const tolerance = Math.max(
    100,
    (halfSpread(grown) * 1.3) / scene.share,
    Math.abs(moved) * random.between(0.2, 1),
  )
  const found = Math.round(random.between(50, 500))
  const want = found + (moved + middle(grown) + random.about(0.2 * scene.share * tolerance)) / 1000
  c.axial = {
    found,
    want: Number(want.toFixed(3)),
    tolerance: Number((tolerance / 1000).toFixed(3)),
  }
}

/** A coupling without readings, and the misalignment it hides as found. */
export function randomCoupling(
  streams: Streams,
  scene: Scene,
  left: Machine,
  right: Machine,
  planes: [number, number],
): { coupling: Coupling; hidden: HiddenLine } {
  const id = `${left.id}-${right.id}`
  const c: Coupling = {
    id,
    left: { machine: left.id, plane: planes[0] },
    right: { machine: right.id, plane: planes[1] },
    tolerance: {},
    aim: aims(streams, id, scene.states),
    found: [],
  }
  const m = midSpan(c)
  const hidden: HiddenLine = { offset: { y: 0, z: 0 }, slope: { y: 0, z: 0 } }
  const asked: HiddenLine = { offset: { y: 0, z: 0 }, slope: { y: 0, z: 0 } }
  const spreads = { offset: 0, slope: 0 }
  for (const axis of ['y', 'z'] as const) {
    const shifts = scene.states.map((state) => shift(scene, c, state, axis))
    const offsets = shifts.map(([offset]) => offset)
    const slopes = shifts.map(([, slope]) => slope)
    const moved = (x: number) =>
      axisMoved(scene.motions, right, 'left', x)[axis] -
      axisMoved(scene.motions, left, 'right', x)[axis]
    asked.offset[axis] = -middle(offsets)
    asked.slope[axis] = -middle(slopes)
    hidden.offset[axis] = -middle(offsets) - moved(m)
    hidden.slope[axis] = -middle(slopes) - (moved(m + 500) - moved(m - 500)) / 1000
    spreads.offset = Math.max(spreads.offset, halfSpread(offsets))
    spreads.slope = Math.max(spreads.slope, halfSpread(slopes))
  }
  tolerances(streams, c, scene, spreads.offset, spreads.slope)
  coldSetting(streams.of('setting', id), c, asked)
  const span = Math.max(planes[1] - planes[0], 100)
  const { offset, angle, flex } = c.tolerance
  const fineRoom = Math.min(offset ?? Infinity, (flex ?? Infinity) * span * 0.5, 100)
  const slopeRoom = Math.min(angle ?? Infinity, flex ?? Infinity, 1)
  const random = streams.of('residue', id)
  for (const axis of ['y', 'z'] as const) {
    hidden.offset[axis] += random.about(0.1 * scene.share * fineRoom)
    hidden.slope[axis] += random.about(0.1 * scene.share * slopeRoom)
  }
  const gap = streams.of('gap', id)
  if (gap.chance(0.45)) axialGap(gap, scene, c)
  return { coupling: c, hidden }
}
