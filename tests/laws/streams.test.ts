import { describe, expect, test } from 'vitest'
import type { TrainDocument } from '../../src/document/schema'
import { isWhole } from '../counts'
import { shimmedFrom } from '../packs/shimmed'
import { clutchesFrom } from '../second/randomClutch'
import { rotorsFrom } from '../second/randomRotors'
import { sureTrainFrom } from '../second/randomSure'
import { surveysFrom } from '../second/randomSurvey'
import { trainFrom } from '../second/randomTrain'
import { streamNames, Streams, type StreamName } from '../second/streams'
import { withIntervals } from './guardedTrains'
import { reaches, room, type Maker } from './streamReach'

const seeds = Array.from({ length: 50 }, (_, i) => 9001 + i)
const few = isWhole ? seeds.length : 6
/** What a stream is begun from in its place: some other train. */
const other = (seed: number) => seed + 31_000

const makers: Record<Maker, (streams: Streams) => object> = {
  train: trainFrom,
  sure: sureTrainFrom,
  surveys: (streams) => surveysFrom(streams, trainFrom(streams)),
  shims: (streams) => shimmedFrom(streams),
  clutches: (streams) => clutchesFrom(streams, trainFrom(streams)),
  rotors: (streams) => rotorsFrom(streams, trainFrom(streams)),
  intervals: (streams) => {
    const train = trainFrom(streams) as unknown as TrainDocument
    withIntervals(train, streams.seed, Infinity, streams)
    return train
  },
}

const makes = Object.keys(makers) as Maker[]

/** Fields that are left out where they are nothing. */
const plainNought = /\.hole\.[xy]$|\.restraints\.\d+\.y$|\.feet\.\d+\.y$/

/** Every number, word and flag of a document by its place. */
function written(thing: unknown, at = '', into = new Map<string, unknown>()): Map<string, unknown> {
  if (typeof thing !== 'object' || thing === null) {
    if (thing !== undefined && !(plainNought.test(at) && thing === 0)) into.set(at, thing)
    return into
  }
  for (const [key, value] of Object.entries(thing))
    written(value, at === '' ? key : `${at}.${key}`, into)
  return into
}

/** Whether a place lies at or under one of these; what names no list of the document is of any body. */
function under(place: string, ways: readonly string[]): boolean {
  const lists = /^(machines|skids|couplings|states|plan|units|clock|surveys)\b/
  return ways.some((way) => {
    const whole = lists.test(way) ? way : `(machines|skids).*.${way}`
    const words = whole.split('.').map((word) => (word === '*' ? String.raw`\d+` : word))
    return new RegExp(`^${words.join(String.raw`\.`)}(\\.|$)`).test(place)
  })
}

/** Where two documents differ, and whether one of them has nothing there. */
function apart(before: object, after: object): { place: string; lacks: boolean }[] {
  const [a, b] = [written(before), written(after)]
  const out: { place: string; lacks: boolean }[] = []
  for (const place of new Set([...a.keys(), ...b.keys()])) {
    if (Object.is(a.get(place), b.get(place))) continue
    const lacks = !a.has(place) || !b.has(place) || typeof a.get(place) !== typeof b.get(place)
    out.push({ place, lacks: lacks && !plainNought.test(place) })
  }
  return out
}

const plain = new Map<string, object>()
/** The document of a train with streams of its own alone, made once. */
function plainOf(by: Maker, seed: number): object {
  const known = plain.get(`${by} ${seed}`)
  const made = known ?? makers[by](new Streams(seed))
  plain.set(`${by} ${seed}`, made)
  return made
}

describe('a stream that is begun elsewhere', () => {
  test.each(streamNames)('%s: changes what it draws, and reshuffles nothing', (name) => {
    const { by, draws, follows = [] } = reaches[name]
    const strayed: string[] = []
    const untouched = new Set([...draws, ...(follows === room ? [] : follows)])
    let changed = 0
    for (const [tried, seed] of seeds.entries()) {
      // one that few trains have is looked for further on
      if (tried >= few && changed > 0) break
      const after = makers[by](new Streams(seed, { [name]: other(seed) }))
      for (const { place, lacks } of apart(plainOf(by, seed), after)) {
        changed += 1
        for (const way of untouched) if (under(place, [way])) untouched.delete(way)
        if (!under(place, draws) && (lacks || !under(place, follows)))
          strayed.push(`train ${seed}: ${place} ${lacks ? 'came or went' : 'changed'}`)
      }
    }
    expect(strayed).toEqual([])
    expect(changed).toBeGreaterThan(0)
    // no place is let change that never does: of few trains none need have it
    if (isWhole) expect([...untouched]).toEqual([])
  })

  test.each(makes)('all of them are the other train, of the maker: %s', (by) => {
    for (const seed of seeds.slice(0, few)) {
      const all = Object.fromEntries(streamNames.map((name) => [name, other(seed)]))
      const made = written(makers[by](new Streams(seed, all)))
      const there = written(makers[by](new Streams(other(seed))))
      expect(made.get('name')).toBe(`Random train ${seed}`)
      // what is drawn from anywhere else would stay that of the first
      expect([...made].filter(([at]) => at !== 'name')).toEqual(
        [...there].filter(([at]) => at !== 'name'),
      )
    }
  })
})

describe('streams', () => {
  const firsts = (name: StreamName, ...place: string[]) =>
    seeds.map((seed) => new Streams(seed).of(name, ...place).next())

  test('of other places, names and trains are others; of the same one the same', () => {
    const told = new Set([...firsts('pack', 'A', '1a'), ...firsts('pack', 'A', '1b')])
    for (const first of firsts('lift', 'A', '1a')) told.add(first)
    expect(told.size).toBe(3 * seeds.length)
    expect(firsts('pack', 'A', '1a')).toEqual(firsts('pack', 'A', '1a'))
  })

  test('go on from where they were when asked for again', () => {
    const streams = new Streams(1)
    const [first, second] = [streams.of('pack', 'A').next(), streams.of('pack', 'A').next()]
    const again = new Streams(1).of('pack', 'A')
    expect([first, second]).toEqual([again.next(), again.next()])
  })

  test('of neighbouring trains begin evenly, and apart from each other', () => {
    const draws = Array.from({ length: 4000 }, (_, i) =>
      (['pack', 'lift'] as const).map((name) => new Streams(i).of(name, 'A', '1a').next()),
    )
    // 4000 of them in ten equal parts: 400 each, 19 standard deviation; their product's mean 1/4, 0.0035 standard deviation
    for (let part = 0; part < 10; part++)
      for (const k of [0, 1]) {
        const within = draws.filter((pair) => Math.floor(10 * (pair[k] ?? NaN)) === part).length
        expect(Math.abs(within - 400)).toBeLessThan(95)
      }
    const product = draws.reduce((sum, [a = NaN, b = NaN]) => sum + a * b, 0) / draws.length
    expect(Math.abs(product - 0.25)).toBeLessThan(0.0175)
  })
})
