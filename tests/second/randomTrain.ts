import { hiddenMotion, HiddenMotions } from './hiddenMotion'
import { converted } from './metric'
import { rounded } from './random'
import { randomCoupling } from './randomCoupling'
import { randomGrowth, randomStates, stateBetween, unusedGrowth } from './randomGrowth'
import { LimitMaker } from './randomLimits'
import { holdSome, randomMachine, randomSkid } from './randomMachine'
import { ReadingTaker } from './randomReadings'
import { Streams } from './streams'
import type { Coupling, Machine, Plan, Skid, Train } from './train'

interface Layout {
  machines: Machine[]
  /** Where each machine begins and ends (mm). */
  ends: [number, number][]
}

function layOut(streams: Streams): Layout {
  const random = streams.of('layout')
  const count = random.pick([2, 2, 3, 3, 3, 4, 4, 5, 6, 7])
  const machines: Machine[] = []
  const ends: [number, number][] = []
  let x = random.chance(0.5) ? 0 : Math.round(random.about(2000))
  for (let i = 0; i < count; i++) {
    const from = x
    const to = from + Math.round(random.between(600, 2600))
    machines.push(randomMachine(streams, 'ABCDEFG'[i] ?? 'H', from, to))
    ends.push([from, to])
    x = to + (random.chance(0.25) ? 0 : Math.round(random.between(80, 700)))
  }
  return { machines, ends }
}

/** No skid, one under up to three neighbours, or two of them. */
function skidsUnder(streams: Streams, machines: Machine[]): Skid[] {
  const random = streams.of('skids')
  const skids: Skid[] = []
  let first = 0
  while (first < machines.length && skids.length < 2 && random.chance(0.4)) {
    first += random.whole(0, machines.length - 1 - first)
    const count = Math.min(machines.length - first, random.whole(1, 3))
    const carried = machines.slice(first, first + count)
    skids.push(randomSkid(streams, `skid ${skids.length + 1}`, carried))
    first += count
  }
  return skids
}

function planFor(streams: Streams): Plan {
  const plan: Plan = {}
  const share = streams.of('share')
  if (share.chance(0.85)) plan.share = share.pick([0.4, 0.5, 0.6, 0.7, 0.7, 0.7, 0.85, 1])
  const weights = streams.of('weights')
  if (weights.chance(0.3)) {
    const weight = () => (weights.chance(0.04) ? 0 : weights.pick([0.5, 1, 1.5, 2, 3]))
    plan.weights = { shim: weight(), side: weight(), axial: weight() }
    // moves that cost nothing: only the worst share is left to choose by
    if (weights.chance(0.08)) plan.weights = { shim: 0, side: 0, axial: 0 }
  }
  const reserve = streams.of('reserve')
  if (reserve.chance(0.5)) plan.reserve = reserve.pick([20, 50, 100, 150])
  return plan
}

/** Writes the train in units of its own, each number as someone would type it. */
function dressed(train: Train, length: 'mm' | 'in'): Train {
  const { fine } = train.units
  const long = length === 'in' ? 25.4 : 1
  const [size, step] = {
    um: [1, 1] as const,
    mm: [1000, 0.001] as const,
    mil: [25.4, 0.1] as const,
  }[fine]
  const typed = converted(train, {
    length: (v) => rounded(v / long, 0.001),
    fine: (v) => rounded(v / size, step),
  })
  typed.units = { ...train.units, length, fine }
  return JSON.parse(JSON.stringify(typed)) as Train
}

/** The motions that would put a train right: some far, some small, some of them none. */
function motionsOf(streams: Streams, machines: Machine[], skids: Skid[]): HiddenMotions {
  const motions = new HiddenMotions(skids)
  const random = streams.of('motion')
  const size = random.chance(0.05) ? 3 : random.scale(80, 1200)
  for (const body of [...skids, ...machines]) {
    const own = streams.of('motion', body.id)
    // what carries machines moves further than they do on it
    const onIt = own.between(0, 0.6)
    const part = skids.some((s) => s.carries.includes(body.id)) ? onIt : 1
    const alike = own.chance(0.15) ? 0 : 1
    motions.set(body.id, hiddenMotion(streams, body, size * part * alike))
  }
  return motions
}

/** A valid random train document: a hidden geometry, readings of it, and limits around its cure. */
export const randomTrain = (seed: number): Train => trainFrom(new Streams(seed))

/** The same, from streams of which some may be another train's. */
export function trainFrom(streams: Streams): Train {
  const units = streams.of('units')
  const fine = units.pick(['um', 'um', 'mm', 'mil'] as const)
  const length = units.pick(['mm', 'mm', 'in'] as const)
  const celsius = units.chance(0.7)
  const { machines, ends } = layOut(streams)
  const skids = skidsUnder(streams, machines)
  holdSome(streams, machines, skids)
  const { states, warmth } = randomStates(streams)
  const stateless = streams.of('states').chance(0.08)
  machines.forEach((machine, i) => {
    const [from = 0, to = 0] = ends[i] ?? []
    for (const state of stateless ? [] : states)
      randomGrowth(streams, machine, from, to, state, warmth.get(state.id) ?? 0, celsius)
  })
  const motions = motionsOf(streams, machines, skids)
  const listed = stateless ? [{ id: 'cold', name: 'cold' }] : states
  const coarse = streams.of('dial step').pick([1, 5, 10])
  const step = fine === 'mil' ? 12.7 : coarse
  const plan = planFor(streams)
  const circles = streams.of('circles').chance(0.85)
  const scene = { share: plan.share ?? 1, circles, machines, states: listed, motions }
  const couplings: Coupling[] = []
  for (let i = 1; i < machines.length; i++) {
    const left = machines[i - 1]
    const right = machines[i]
    const planes: [number, number] = [ends[i - 1]?.[1] ?? 0, ends[i]?.[0] ?? 0]
    if (!left || !right) continue
    const { coupling, hidden } = randomCoupling(streams, scene, left, right, planes)
    new ReadingTaker(streams, coupling, hidden, step).take()
    couplings.push(coupling)
  }
  const tight = streams.of('tight').pick([0.05, 0.15, 0.3])
  const maker = new LimitMaker(streams, motions, plan.reserve ?? 0, circles, tight)
  for (const machine of machines) maker.limit(machine, machine.base ?? 0)
  for (const skid of skids) maker.limit(skid, 0)
  const train: Train = {
    format: 'holdfast-train',
    version: 1,
    name: `Random train ${streams.seed}`,
    units: { length: 'mm', fine, temperature: celsius ? 'C' : 'F' },
    clock: { seenFrom: streams.of('clock').pick(['left', 'right']) },
    machines,
    skids: skids.length > 0 ? skids : undefined,
    couplings,
    states: stateless ? undefined : states,
    plan: Object.keys(plan).length > 0 ? plan : undefined,
  }
  unusedGrowth(streams, train)
  stateBetween(streams, train)
  return dressed(train, length)
}
