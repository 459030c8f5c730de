import { metric } from './metric'
import { Streams } from './streams'
import { fitted, type FourNumbers } from './sure/coupled'
import {
  fineFactor,
  lengthFactor,
  type Coupling,
  type Survey,
  type SurveyPoint,
  type Train,
} from './train'

/** How far a machine's own line lies off that of the first one, at a place (um and mm, a train in these). */
export function chainAt(
  train: Train,
  machine: string,
  x: number,
  way: 'y' | 'z',
  lineOf: (c: Coupling) => FourNumbers,
): number {
  let here = 0
  let id = train.machines[0]?.id
  while (id !== machine) {
    const c = train.couplings.find(({ left }) => left.machine === id)
    if (!c) throw new Error(`no way to ${machine}`)
    const [oy, oz, sy, sz] = lineOf(c)
    const middle = (c.left.plane + c.right.plane) / 2
    here += (way === 'y' ? oy : oz) + (way === 'y' ? sy : sz) * (x - middle)
    id = c.right.machine
  }
  return here
}

/** The lines of all couplings, worked out once. */
export function linesOf({ couplings }: Train): (c: Coupling) => FourNumbers {
  const lines = new Map(couplings.map((c) => [c, fitted(c).line]))
  return (c) => lines.get(c) ?? [NaN, NaN, NaN, NaN]
}

/** From where to where a machine's shaft reaches, by its couplings and feet. */
function shaftOf(train: Train, id: string): [number, number] {
  const at = (end: 'left' | 'right') =>
    train.couplings.find((c: Coupling) => c[end].machine === id)?.[end].plane
  const feet = train.machines.find((machine) => machine.id === id)?.feet.map(({ x }) => x) ?? []
  const [left, right] = [at('right'), at('left')]
  return [
    left ?? Math.min(...feet, (right ?? 0) - 500),
    right ?? Math.max(...feet, (left ?? 0) + 500),
  ]
}

/** A train with one survey or two that lie near what its couplings say, on places of all machines. */
export const withSurveys = (document: Train, seed: number, joins = true): Train =>
  surveysFrom(new Streams(seed), document, joins)

/** The same, from streams of which some may be another train's. */
export function surveysFrom(streams: Streams, document: Train, joins = true): Train {
  const train = metric(document)
  const lineOf = linesOf(train)
  const [long, fine] = [lengthFactor(document), fineFactor(document)]
  const surveys = Array.from({ length: streams.of('surveys').pick([1, 1, 2]) }, (_, s): Survey => {
    const random = streams.of('survey', s)
    const known = streams.of('survey u', s)
    const ways = random.pick<readonly ('y' | 'z')[]>([['z'], ['z', 'y'], ['y']])
    const [height, slope] = [random.between(-3000, 3000), random.between(-1, 1)]
    const points = train.machines.flatMap(({ id }, m): SurveyPoint[] => {
      const [from, to] = shaftOf(train, id)
      const count = m === 0 ? 2 : random.pick([1, 1, 2, 3])
      return Array.from({ length: count }, (__, i): SurveyPoint => {
        const part = (i + random.between(0.1, 0.9)) / count
        const x = Number(
          (Math.max(from, Math.min(to, from + part * (to - from))) / long).toFixed(3),
        )
        const value = (way: 'y' | 'z') =>
          (chainAt(train, id, x * long, way, lineOf) +
            height +
            slope * x * long +
            random.between(-40, 40)) /
          fine
        return {
          machine: id,
          x,
          ...(ways.includes('z') && { z: value('z') }),
          ...(ways.includes('y') && { y: value('y') }),
          ...(known.chance(0.3) && { u: known.pick([8, 15, 40]) / fine }),
        }
      })
    })
    const given = known.maybe(0.5, () => known.pick([10, 30]) / fine)
    return { id: `survey ${s + 1}`, ...(given !== undefined && { u: given }), joins, points }
  })
  return { ...document, surveys }
}
