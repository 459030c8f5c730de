import { readTrain } from '../../src/document/readTrain'
import type { TrainDocument } from '../../src/document/schema'
import type { Train } from '../../src/mechanics/train'
import { placeOf } from '../second/randomGrowth'
import { randomTrain } from '../second/randomTrain'
import { Streams } from '../second/streams'

/** A random train file with tolerances wide enough for a guard, and settings of the plan. */
export function guardedTrain(
  seed: number,
  { times = 4, plan = {} }: { times?: number; plan?: Partial<TrainDocument['plan']> } = {},
): TrainDocument {
  const document = structuredClone(randomTrain(seed)) as unknown as TrainDocument
  for (const { tolerance, axial } of document.couplings) {
    for (const key of ['flex', 'offset', 'angle'] as const) {
      const limit = tolerance[key]
      if (limit !== undefined) tolerance[key] = limit * times
    }
    if (axial) axial.tolerance *= times
  }
  return { ...document, plan: { ...document.plan, ...plan } }
}

export function readOf(document: TrainDocument): Train {
  const read = readTrain(document)
  if (!read.ok) throw new Error(JSON.stringify(read.refused))
  return read.train
}

type Point = NonNullable<TrainDocument['machines'][number]['growth']>[string][number]

/** An interval in place of a growth value: where it stands, and its two ends in the unit of the file. */
export interface Interval {
  readonly machine: number
  readonly state: string
  readonly point: number
  readonly what: 'rise' | 'side' | 'axial'
  readonly ends: readonly [number, number]
}

/** Some growth values made intervals, none beside a value with a u of its own. */
export function withIntervals(
  document: TrainDocument,
  seed: number,
  most: number,
  streams = new Streams(seed),
): Interval[] {
  const out: Interval[] = []
  document.machines.forEach((machine, m) => {
    for (const [state, points] of Object.entries(machine.growth ?? {}))
      points.forEach((point: Point, p) => {
        for (const what of ['rise', 'side', 'axial'] as const) {
          const value = point[what]
          if (value === undefined || point.heat !== undefined || out.length >= most) continue
          const random = streams.of('intervals', machine.id, state, placeOf(points, p), what)
          if (!random.chance(0.6)) continue
          const half = Math.abs(value) * random.between(0.05, 0.4)
          const ends = [value - half, value + half * random.between(0.5, 1)] as const
          out.push({ machine: m, state, point: p, what, ends })
          // a point gives an interval in place of its value and of its u
          point[what] = undefined
          point.u = undefined
          point.range = { ...point.range, [what]: [...ends] }
        }
      })
  })
  return out
}

/** The file with every interval put to one of its ends. */
export function atEnds(
  document: TrainDocument,
  intervals: readonly Interval[],
  high: (interval: number) => boolean,
): TrainDocument {
  const changed = structuredClone(document)
  intervals.forEach(({ machine, state, point, what, ends }, i) => {
    const at = changed.machines[machine]?.growth?.[state]?.[point]
    if (!at) throw new RangeError('no such point')
    at[what] = ends[high(i) ? 1 : 0]
    delete at.range
  })
  return changed
}
