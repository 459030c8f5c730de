import { rounded, type Random } from './random'
import type { Streams } from './streams'
import type { GrowthPoint, Machine, State, Train } from './train'

/** One point of growth: a rise given, from heat, or both; now and then a side and an axial part. */
function point(random: Random, at: number, warmth: number, celsius: boolean): GrowthPoint {
  const p: GrowthPoint = { at: Math.round(at) }
  const heated = random.chance(0.35)
  if (!heated || random.chance(0.2)) p.rise = Math.round(warmth * random.between(40, 350))
  if (heated) {
    const from = celsius ? 15 : 60
    const rise = warmth * random.between(5, 40) * (celsius ? 1 : 1.8)
    p.heat = {
      height: Math.round(random.between(300, 900)),
      expansion: celsius ? random.pick([11.5, 12, 17]) : random.pick([6.4, 6.7, 9.4]),
      from,
      to: Math.round(from + rise),
    }
  }
  if (random.chance(0.4)) p.side = Math.round(warmth * random.about(60))
  if (random.chance(0.35)) p.axial = Math.round(warmth * random.about(250))
  return p
}

/** Growth of a machine between two x in one state that is `warmth` of full heat. */
export function randomGrowth(
  streams: Streams,
  machine: Machine,
  from: number,
  to: number,
  state: State,
  warmth: number,
  celsius: boolean,
): void {
  const random = streams.of('growth', machine.id, state.id)
  if (warmth === 0 || random.chance(0.1)) return
  const points: GrowthPoint[] = []
  const count = random.pick([1, 2, 2, 2, 3])
  const xs = Array.from({ length: count }, (_, i) =>
    count === 1 ? (from + to) / 2 : from + ((to - from) * i) / (count - 1),
  )
  if (count > 1 && random.chance(0.06)) xs.fill((from + to) / 2)
  const apart = 'left' in machine.axis ? random.chance(0.6) : random.chance(0.15)
  for (const axis of apart ? (['left', 'right'] as const) : [undefined]) {
    for (const at of xs) {
      const p = point(random, at, warmth, celsius)
      if (axis) p.axis = axis
      points.push(p)
    }
  }
  if (apart && random.chance(0.2))
    points.push({ at: Math.round(from), rise: rounded(30 * warmth, 1) })
  machine.growth = { ...machine.growth, [state.id]: points }
}

/** One to four states, the first often cold with a wider tolerance; and how warm each is. */
export function randomStates(streams: Streams): { states: State[]; warmth: Map<string, number> } {
  const random = streams.of('states')
  const count = random.pick([1, 2, 2, 3, 3, 4])
  const warmth = new Map<string, number>()
  const states = Array.from({ length: count }, (_, i): State => {
    const cold = i === 0 && random.chance(0.6)
    const id = cold ? 'cold' : `state-${i + 1}`
    warmth.set(id, cold ? 0 : random.between(0.5, 1))
    const state: State = { id, name: cold ? 'Cold start' : `State ${i + 1}` }
    const factor = streams.of('factor', i)
    const asked = factor.chance(0.25)
    if (cold || asked) state.tolerance = factor.pick([0.8, 1.5, 2, 2.5, 3])
    return state
  })
  return { states, warmth }
}

/** A point far from what is true, which does not count. */
const wild = (random: Random, at: number): GrowthPoint => ({
  at: Math.round(at),
  rise: Math.round(random.about(900)),
  side: Math.round(random.about(400)),
  use: false,
})

/** Where a point stands among those that count: one that does not count may not change the place of any other. */
export const placeOf = (points: readonly { use?: boolean | undefined }[], at: number): string =>
  points[at]?.use === false
    ? 'unused'
    : String(points.slice(0, at).filter(({ use }) => use !== false).length)

/** Points that do not count, among those that do. */
export function unusedGrowth(streams: Streams, { machines }: Train): void {
  for (const machine of machines)
    for (const [state, points] of Object.entries(machine.growth ?? {})) {
      const random = streams.of('unused growth', machine.id, state)
      if (random.chance(0.15))
        points.splice(random.whole(0, points.length), 0, wild(random, random.about(900)))
    }
}

/** A state between two others. */
export function stateBetween(streams: Streams, train: Train): void {
  const random = streams.of('between')
  const { states } = train
  const [a, b] = states ?? []
  if (!states || !a || !b || !random.chance(0.25)) return
  const [from, to] = random.chance(0.5) ? [a, b] : [b, a]
  const by = random.pick(['load', 'temperature'] as const)
  const low = random.whole(0, 40)
  const high = low + random.whole(20, 60)
  from[by] = low
  to[by] = high
  const between: State = {
    id: 'between',
    name: 'Between',
    [by]: random.whole(low, high),
    between: { from: from.id, to: to.id, by },
    tolerance: Math.max(from.tolerance ?? 1, to.tolerance ?? 1),
  }
  states.splice(random.whole(0, states.length), 0, between)
  const [own, silent] = train.machines
  // one that has figures of its own there, and one whose figures there do not count
  if (own && random.chance(0.3))
    own.growth = { ...own.growth, between: [{ at: 0, rise: Math.round(random.between(10, 200)) }] }
  if (silent && random.chance(0.3)) silent.growth = { ...silent.growth, between: [wild(random, 0)] }
}
