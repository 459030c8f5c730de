import { metric } from './metric'
import { rounded, type Random } from './random'
import { placeOf } from './randomGrowth'
import { trainFrom } from './randomTrain'
import { Streams } from './streams'
import { fitted, shows } from './sure/coupled'
import { roomy } from './sureTolerances'
import {
  fineFactor,
  lengthFactor,
  type Coupling,
  type GrowthPoint,
  type Hole,
  type ReadingSet,
  type Sure,
  type Train,
} from './train'

/** Numbers as somebody types them in the units of a document, from mm and um. */
interface Typist {
  long: (mm: number) => number
  fine: (um: number) => number
}

const typist = (train: Train): Typist => ({
  long: (mm) => rounded(mm / lengthFactor(train), 0.001),
  fine: (um) => Number((um / fineFactor(train)).toPrecision(6)),
})

/** How well each set is known: some fields entered, some left out, now and then a zero that is believed. */
function knowSets(streams: Streams, c: Coupling, added: number, { long, fine }: Typist): void {
  const oneBar = streams.of('known sets', c.id).chance(0.6)
  c.found.forEach((set, at) => {
    // sets that were put before the others may not change the place of these
    const i = at - added
    const dice = streams.of('known sets', c.id, i)
    if (set.kind === 'line') return
    if (set.kind === 'rim') set.uAt = dice.maybe(0.4, () => long(dice.pick([0, 0.5, 2, 4])))
    else set.uDiameter = dice.maybe(0.4, () => long(dice.pick([0, 0.5, 2, 4])))
    if (set.kind === 'gap') return
    set.uSag = dice.maybe(0.5, () => fine(dice.pick([0, 4, 8, 15, 30])))
    if (oneBar) set.bracket = 'bar'
    else if (dice.chance(0.3)) set.bracket = `bar ${Math.abs(i % 2)}`
  })
}

/**
 * A gap set read before the rims, and a set that does not count: neither may take a bracket's or a zero's place. How many
 * were put before the others.
 */
function addSets(dice: Random, c: Coupling, asFound: Coupling, { long, fine }: Typist): number {
  const { line } = fitted(asFound)
  const rims = c.found.filter((set) => set.kind === 'rim').length
  const sets: ReadingSet[] = []
  const read = (diameter: number): ReadingSet => {
    const gap: ReadingSet = { kind: 'gap', diameter, readings: [] }
    gap.readings = [12, 3, 6, 9].map((hour) => [hour, -3000 + shows(asFound, gap, hour, line)])
    return gap
  }
  const asTyped = (set: ReadingSet): void => {
    if (set.kind !== 'gap') return
    set.diameter = long(set.diameter)
    set.readings = set.readings.map(([hour, value]) => [hour, fine(value)])
    sets.push(set)
  }
  if (dice.chance(rims > 1 ? 0.5 : 0.1)) asTyped(read(300))
  if (dice.chance(0.25)) {
    asTyped({
      kind: 'gap',
      diameter: 200,
      use: false,
      why: 'the feeler slipped',
      readings: [
        [12, -400],
        [6, -3100],
      ],
    })
  }
  c.found.unshift(...sets)
  return sets.length
}

function knowGrowth(
  streams: Streams,
  [machine, state]: [string, string],
  points: GrowthPoint[],
  { fine }: Typist,
): void {
  points.forEach((p, i) => {
    const dice = streams.of('known growth', machine, state, placeOf(points, i))
    if (dice.chance(0.3)) {
      // an interval says itself how well it is known
      p.u = fine(dice.pick([0, 5, 15, 30]))
      return
    }
    if (dice.chance(0.15) && p.rise !== undefined && !p.heat) {
      const half = fine(dice.pick([10, 20, 40]))
      p.range = { rise: [p.rise - half, p.rise + half] }
      delete p.rise
    }
    for (const way of ['side', 'axial'] as const) {
      const value = p[way]
      if (value === undefined || !dice.chance(0.1)) continue
      p.range = { ...p.range, [way]: [value - fine(10), value + fine(25)] }
      Reflect.deleteProperty(p, way)
    }
  })
}

function growths(streams: Streams, train: Train, typed: Typist): void {
  for (const machine of train.machines) {
    for (const [state, points] of Object.entries(machine.growth ?? {}))
      knowGrowth(streams, [machine.id, state], points, typed)
    // a state of zeros is the shut-down position, unless somebody doubts one of them
    const [first] = train.states ?? []
    const dice = streams.of('silent growth', machine.id)
    if (!first || machine.growth?.[first.id] || !dice.chance(0.2)) continue
    const silent: GrowthPoint = { at: machine.feet[0]?.x ?? 0, rise: 0 }
    if (dice.chance(0.3)) silent.u = typed.fine(15)
    machine.growth = { ...machine.growth, [first.id]: [silent] }
  }
}

/** Keys, feet that may not be shimmed, and bolts that are known better or worse. */
function feet(streams: Streams, train: Train, { fine }: Typist): void {
  for (const body of [...train.machines, ...(train.skids ?? [])]) {
    const keys = streams.of('sure key', body.id)
    const key = keys.chance(0.1) ? body.feet[0] : undefined
    if (key) key.free = keys.chance(0.5) ? { side: false } : { shim: false }
    const dice = streams.of('known holes', body.id)
    const known = dice.maybe(0.5, () => fine(dice.pick([0, 50, 100, 300])))
    const holes = body.feet.flatMap(({ hole }): Hole[] => (hole ? [hole] : []))
    for (const hole of holes) hole.u = known
  }
}

function asked(streams: Streams, { long, fine }: Typist): Sure {
  const sure: Sure = {}
  const [shim, slide, foot, seed] = [
    streams.of('sure', 'shim'),
    streams.of('sure', 'slide'),
    streams.of('sure', 'foot'),
    streams.of('sure', 'seed'),
  ]
  if (shim.chance(0.5)) sure.shim = fine(shim.pick([0, 5, 15, 25]))
  if (slide.chance(0.5)) sure.slide = fine(slide.pick([0, 10, 30, 50]))
  if (foot.chance(0.5)) sure.foot = long(foot.pick([0, 1, 5, 10]))
  if (seed.chance(0.3)) sure.seed = seed.whole(1, 1000)
  return sure
}

/** A random train with everything that says how well it is known, and tolerances that this may pass. */
export const randomSureTrain = (seed: number): Train => sureTrainFrom(new Streams(seed))

/** The same, from streams of which some may be another train's. */
export function sureTrainFrom(streams: Streams): Train {
  const train = trainFrom(streams)
  const typed = typist(train)
  const asFound = metric(train).couplings
  train.couplings.forEach((c, i) => {
    const added = addSets(streams.of('added sets', c.id), c, asFound[i] ?? c, typed)
    knowSets(streams, c, added, typed)
    const gap = streams.of('known gap', c.id)
    if (c.axial) c.axial.u = gap.maybe(0.6, () => typed.long(gap.pick([0, 0.02, 0.05, 0.15])))
  })
  growths(streams, train, typed)
  feet(streams, train, typed)
  train.plan = { ...train.plan, sure: asked(streams, typed) }
  return JSON.parse(JSON.stringify(roomy(train, streams.of('room')))) as Train
}
