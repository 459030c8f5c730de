import { describe, expect, it } from 'vitest'
import { close, given, fourFeet, pair, planOf, twoFeet, type Json } from './pair'

/**
 * B is 200 low and may be 100: 1.9 a - 0.9 b = 100 at its rows at 1000 and 2000 mm. Alone the near
 * row would rise by 52.63; what it may not, the far one makes up for by 1.9 / 0.9 = 2.111 downward.
 */
const low = (right: Json, more: Json = {}) =>
  planOf(pair({ right, found: [given(0, -200)], ...more })).binding ?? []

const limited = (limit: Json, on: (row: number, foot: number) => boolean) =>
  fourFeet.map((foot, i) => (on(Math.floor(i / 2), i) ? { ...foot, ...limit } : foot))

/** Saved by a um of the near row: 2 * 2.111 at the far row, less 2 at the near one. */
const saved = 3.8 / 0.9 - 2

/** A price is said to hold while the saving stays within 1 % of it on average: a little further than exactly. */
const until = (exactly: number, later = 0) => (exactly * (1 - later)) / (0.99 - later)

/** Equal prices may stand in any order, so they are listed by their words. */
const brief = (binding: ReturnType<typeof low>) =>
  binding
    .map(({ limit, where, price, unit, upTo }) => [limit, where, price, unit, upTo])
    .sort(([a], [b]) => String(b).localeCompare(String(a)))

describe('the price of a limit', () => {
  it('of a tolerance is what one unit of it saves: 2 / 1.9 for two feet at the near row', () => {
    // until nothing has to move: 100 more
    expect(brief(low({}))).toEqual([
      ['offset', 'Motor to Pump, cold, in height', close(2 / 1.9, 6), 'µm', close(until(100), 4)],
    ])
  })

  it('counts the share: at 0.5 of it, one unit of tolerance is half a unit of room', () => {
    const [offset] = low({}, { rest: { plan: { share: 0.5 } } })
    expect(offset?.price).toBeCloseTo(1 / 1.9, 6)
    expect(offset?.upTo).toBeCloseTo(until(300), 3) // from 100 to 400, half of which is 200
  })

  it('of a pack that holds one foot back: 2 * 2.111 saved at the far row less 2 at the near one', () => {
    const pack = { pack: { now: 1000, max: 1050 } }
    const binding = low({ feet: limited(pack, (_, foot) => foot === 0) })
    expect(brief(binding)).toEqual([
      // the far row comes down by 5.56: 2 / 0.9 saved for each of 5 um of offset, then 2 / 1.9
      [
        'offset',
        'Motor to Pump, cold, in height',
        close(2 / 0.9, 6),
        'µm',
        close(until(5, 0.9 / 1.9), 3),
      ],
      ['maximum pack', 'Pump foot 1000a', close(saved, 6), 'µm', close(until(2.6316), 3)],
    ])
    expect(binding.map(({ part }) => part)).toContainEqual({ body: 'B', foot: '1000a' })
  })

  it.each<[string, Json, string]>([
    ['packs', { pack: { now: 1000, max: 1050 } }, 'maximum pack'],
    ['lifts', { lift: 50 }, 'lift'],
  ])('of two %s of one row is that of the row: one alone saves nothing', (_, limit, word) => {
    const both = low({ feet: limited(limit, (row) => row === 0) })
    expect(brief(both)).toEqual([
      [
        'offset',
        'Motor to Pump, cold, in height',
        close(2 / 0.9, 6),
        'µm',
        close(until(5, 0.9 / 1.9), 3),
      ],
      [word, 'Pump feet 1000a and 1000b', close(saved, 6), 'µm', close(until(2.6316), 3)],
    ])
    expect(both.find((b) => b.limit === word)?.part).toEqual({
      ...{ body: 'B', foot: '1000a', feet: ['1000a', '1000b'] },
    })
    const one = low({ feet: limited(limit, (_, foot) => foot === 1) })
    expect(one.map((b) => b.limit).sort()).toEqual([word, 'offset'].sort())
  })

  it('of a minimum pack is the same when B is 200 high', () => {
    const feet = limited({ pack: { now: 1000, min: 950 } }, (_, foot) => foot === 0)
    const binding = planOf(pair({ right: { feet }, found: [given(0, 200)] })).binding ?? []
    expect(brief(binding)).toContainEqual([
      'minimum pack',
      'Pump foot 1000a',
      close(saved, 6),
      'µm',
      close(until(2.6316), 3),
    ])
  })

  it('of a nozzle over the near row is that of a foot there', () => {
    const restraints = [{ id: 'n', x: 1000, z: 900, rise: [-500, 50] }]
    const binding = low({ restraints })
    expect(brief(binding)).toContainEqual([
      'restraint',
      'Pump n, upward',
      close(saved, 6),
      'µm',
      close(until(2.6316), 3),
    ])
    expect(binding.map(({ part }) => part)).toContainEqual({
      body: 'B',
      restraint: 'n',
      way: 'rise',
    })
  })

  it('of a tilt is per mrad: 10 um between the rows a hundredth', () => {
    // b - a >= -40 where -52.63 was wanted; 1.9 a - 0.9 b = 100 gives a = 64, b = 24, cost 176;
    // t mrad of pitch: a = 100 - 0.9 * 1000 t, b = a - 1000 t, so 2 (a + b) falls by 5600 a mrad
    const [tilt, offset] = low({ tilt: 0.04 }) // dearest first
    expect(tilt).toMatchObject({
      limit: 'tilt',
      where: 'Pump',
      price: close(5600, 3),
      unit: 'mrad',
      upTo: close(until(0.012632), 5),
      part: { body: 'B' },
    })
    // a um of offset: a and b both, at two feet each
    expect(offset).toMatchObject({ limit: 'offset', price: close(4, 5) })
  })

  it('of a hole is per um of its radius: rows count once, 2.111 less 1', () => {
    // feet in the middle, so that a yaw carries none along: the near row may go 50
    const feet = twoFeet.map((f, i) => (i === 0 ? { ...f, hole: { clearance: 100 } } : f))
    const binding = planOf(pair({ right: { feet }, found: [given(-200, 0)] })).binding ?? []
    expect(brief(binding)).toEqual([
      [
        'offset',
        'Motor to Pump, cold, sideways',
        close(1 / 0.9, 5),
        'µm',
        close(until(5, 0.9 / 1.9), 3),
      ],
      [
        'hole',
        "Pump foot 1000, toward 3 o'clock",
        close(saved / 2, 4),
        'µm',
        close(until(2.6316), 3),
      ],
    ])
  })

  it('of a gap is per length, and the train’s own units count', () => {
    // 251 where 250 +- 0.2 is wanted: 800 um along; a mm of tolerance saves 1000 um
    const right = { free: { shim: false, side: false, axial: true } }
    const coupling = (scale: number) => ({
      axial: { found: 251 / scale, want: 250 / scale, tolerance: 0.2 / scale },
    })
    const [metric] = low(right, { found: [given(0, 0)], coupling: coupling(1) })
    expect(metric).toMatchObject({
      limit: 'gap',
      price: close(1000, 3),
      unit: 'mm',
      upTo: close(until(0.8), 5),
    })
    const [inches] = low(right, {
      found: [given(0, 0)],
      coupling: coupling(25.4),
      rest: { units: { length: 'in', fine: 'mil' } },
    })
    // a mil of cost for a mil of gap: 1000 mil an inch
    expect(inches).toMatchObject({
      price: close(1000, 3),
      unit: 'in',
      upTo: close(until(0.8 / 25.4), 5),
    })
  })
})
