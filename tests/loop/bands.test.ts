import { describe, expect, it } from 'vitest'
import { noMotion, type Motion } from '../../src/mechanics/motion'
import { asFound } from '../../src/mechanics/readings/asFound'
import type { ReadingSet, Train } from '../../src/mechanics/train'
import { expectedAt } from '../../src/engine/fieldwork/steps/judge'
import { pair, trainOf, type Json } from '../engine/pair'
import { Random } from '../second/random'

const draws = process.env['HOLDFAST_LONG'] === '1' ? 20000 : 3000

/** Standard deviations as the contract of uncertainties has them (um, mrad), common practice without a source. */
const u = { reading: 10, slope: 0.05, shim: 10, slide: 20 }

const sweep = (kind: Json, readings: [number, number][]): Json => ({ ...kind, readings })
const turn: [number, number][] = [12, 3, 6, 9].map((hour) => [hour, 0])

/** A motor that stays and a pump, the coupling's planes at x 0 and 200, read in some way. */
const read = (found: readonly Json[]): Train => trainOf(pair({ found }))

const ways: [string, Json[]][] = [
  [
    'rims over a full turn',
    [
      sweep({ kind: 'rim', rides: 'left', at: 0, sag: 20 }, turn),
      sweep({ kind: 'rim', rides: 'right', at: 200, sag: 20 }, turn),
    ],
  ],
  [
    'rims over a third of a turn',
    ['left', 'right'].map((rides) =>
      sweep(
        { kind: 'rim', rides, at: rides === 'left' ? 0 : 200, sag: 0 },
        [10, 11, 12, 1, 2].map((hour) => [hour, hour === 10 ? 0 : 1]),
      ),
    ),
  ],
  [
    'rim and face',
    [
      sweep({ kind: 'rim', rides: 'right', at: 150 }, turn),
      sweep({ kind: 'face', rides: 'right', diameter: 250, face: 'front' }, turn),
    ],
  ],
  [
    'rim and gauges between the faces',
    [
      sweep({ kind: 'rim', rides: 'right', at: 150 }, turn),
      sweep(
        { kind: 'gap', diameter: 250 },
        [12, 3, 6, 9].map((hour) => [hour, 3000]),
      ),
    ],
  ],
  ['an instrument', [{ kind: 'line', at: 60, offset: { y: 0, z: 0 }, slope: { y: 0, z: 0 } }]],
]

/** Normal of mean 0 by the polar form of Box and Muller (textbook). */
const normal = (random: Random, deviation: number): number =>
  deviation * Math.sqrt(-2 * Math.log(1 - random.next())) * Math.cos(2 * Math.PI * random.next())

/** Offset at mid-span and slope, sideways and up, right axis against left. */
interface Line {
  y: number
  z: number
  sy: number
  sz: number
}

const at = (hour: number) => ({
  y: Math.sin((hour * Math.PI) / 6),
  z: Math.cos((hour * Math.PI) / 6),
})

/**
 * What a set shows of a line, from the definitions of the train file, written apart: a rim sees the other axis pass by
 * at its own x, a face and a gap the slope over half a diameter.
 */
function shown(random: Random, set: ReadingSet, { y, z, sy, sz }: Line, gap: number): ReadingSet {
  if (set.kind === 'line') {
    const arm = set.at - 100
    return {
      ...set,
      offset: {
        y: y + sy * arm + normal(random, u.reading),
        z: z + sz * arm + normal(random, u.reading),
      },
      slope: { y: sy + normal(random, u.slope), z: sz + normal(random, u.slope) },
    }
  }
  const values = set.readings.map(({ hour }) => {
    const d = at(hour)
    const noise = normal(random, u.reading)
    switch (set.kind) {
      case 'rim': {
        const arm = set.at - 100
        const sign = set.rides === 'right' ? 1 : -1
        return sign * ((y + sy * arm) * d.y + (z + sz * arm) * d.z) + set.sag * d.z + noise
      }
      case 'face':
        return (set.diameter / 2) * (sy * d.y + sz * d.z) + set.sag * d.z + noise
      case 'gap':
        return 3000 + gap - (set.diameter / 2) * (sy * d.y + sz * d.z) + noise
      case 'spool':
        throw new Error('not read here')
    }
  })
  // a dial is set to 0 where its first reading is taken; gauges have no zero to set
  const zero = set.kind === 'gap' ? 0 : (values[0] ?? 0)
  return {
    ...set,
    readings: set.readings.map(({ hour }, k) => ({ hour, value: (values[k] ?? 0) - zero })),
  }
}

/**
 * What shims at the feet and slides at the rows do to the pump's axis at the coupling, by hand: its feet stand at x 1000
 * and 2000, 300 mm either side, its axis 400 mm up. Four feet bolted to a stiff frame: the mean plane; a roll carries the
 * axis aside by its height.
 */
function moved(
  shims: readonly number[],
  slides: readonly [number, number],
): Line & { gap: number } {
  const [a = 0, b = 0, c = 0, d = 0] = shims
  const [near, far] = [(a + b) / 2, (c + d) / 2]
  const sz = (far - near) / 1000
  const roll = (a - b + c - d) / (4 * 300)
  const sy = (slides[1] - slides[0]) / 1000
  const back = 100 - 1500
  return {
    z: (near + far) / 2 + sz * back,
    sz,
    y: (slides[0] + slides[1]) / 2 + sy * back - roll * 400,
    sy,
    // the axis is 400 mm up, so a slope of the frame carries the shaft's end along
    gap: -sz * 400,
  }
}

describe.each(ways)('what is expected of %s', (_, found) => {
  const train = read(found)
  const told = { shims: [320, 320, -150, -150], slides: [-200, 260] as const }
  const plan = moved(told.shims, [told.slides[0], told.slides[1]])
  const mean = (320 - 150) / 2
  const motion: Motion = {
    ...noMotion,
    tz: mean,
    sz: plan.sz,
    ty: (told.slides[0] + told.slides[1]) / 2,
    sy: plan.sy,
  }

  it(`is within its band 95 times of 100, ${draws} jobs with errors of readings, shims and slides`, () => {
    const random = new Random(4711)
    let [inside, all] = [0, 0]
    const count = (value: number, band: readonly [number, number] | undefined) => {
      if (!band) throw new Error('no band')
      all++
      if (value >= band[0] && value <= band[1]) inside++
    }
    for (let draw = 0; draw < draws; draw++) {
      const line = {
        ...{ y: normal(random, 300), z: normal(random, 300) },
        ...{ sy: normal(random, 0.5), sz: normal(random, 0.5) },
      }
      const before = {
        ...train,
        couplings: train.couplings.map((coupling) => ({
          ...coupling,
          found: coupling.found.map((set) => shown(random, set, line, 0)),
        })),
      }
      const expected = expectedAt(before, before.couplings.map(asFound), [noMotion, motion], [0])
      const came = moved(
        told.shims.map((shim) => shim + normal(random, u.shim)),
        [told.slides[0] + normal(random, u.slide), told.slides[1] + normal(random, u.slide)],
      )
      const now = {
        ...{ y: line.y + came.y, z: line.z + came.z },
        ...{ sy: line.sy + came.sy, sz: line.sz + came.sz },
      }
      for (const [s, entry] of expected.entries()) {
        const set = before.couplings[0]?.found[s]
        if (!set) throw new Error('no set')
        const again = shown(random, set, now, came.gap)
        if (again.kind === 'line') {
          if (!('offset' in entry)) throw new Error('not a line')
          for (const way of ['y', 'z'] as const) {
            count(again.offset[way] ?? NaN, entry.good?.offset[way])
            count(again.slope[way] ?? NaN, entry.good?.slope[way])
          }
        } else {
          if (!('readings' in entry)) throw new Error('not a sweep')
          for (const [k, { value }] of again.readings.entries())
            if (k > 0 || set.kind === 'gap') count(value, entry.good?.[k])
        }
      }
    }
    const part = (100 * inside) / all
    console.log(`${part.toFixed(2)} % of ${all} readings within their band`)
    expect(part).toBeGreaterThan(93.5)
    expect(part).toBeLessThan(96.5)
  })

  it('is where the band has its middle, and nothing is open at a dial that is set to 0', () => {
    const expected = expectedAt(train, train.couplings.map(asFound), [noMotion, motion], [0])
    for (const entry of expected) {
      if (!('readings' in entry)) continue
      for (const [k, [, value]] of entry.readings.entries()) {
        const [low, high] = entry.good?.[k] ?? [NaN, NaN]
        expect((low + high) / 2).toBeCloseTo(value, 9)
        expect(high - low > 0).toBe(value !== 0 || k > 0)
      }
    }
  })
})
