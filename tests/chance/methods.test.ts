import { describe, expect, it } from 'vitest'
import type { ReadingSetDocument } from '../../src/document/schema'
import { findingsOf } from '../../src/engine/plan/findings'
import { asFound } from '../../src/mechanics/readings/asFound'
import { comparedMethods } from '../../src/mechanics/uncertainty/methods'
import { ellipsePair } from '../../src/scene/methodEllipses'
import { Random } from '../second/random'
import { anchoredPair, readPair } from './anchoredPair'
import { isWhole } from '../counts'

const normal = (draw: Random) =>
  Array.from({ length: 12 }, () => draw.next()).reduce((a, b) => a + b) - 6

/** Two anchored machines and one coupling with mid-span at x = 1000. */
const reading = (found: ReadingSetDocument[]) =>
  readPair(anchoredPair({ name: 'a to b', tolerance: { flex: 1 }, found }, [900, 1100], 1400))

type Line = { y: number; z: number; sy: number; sz: number }

/** A rim sweep at 12, 3, 6, 9 with its errors: reading = c ± d(at) . u, stem in is +. */
const rim = (
  d: Line,
  rides: 'left' | 'right',
  at: number,
  error: () => number,
): ReadingSetDocument => ({
  kind: 'rim',
  rides,
  at,
  sag: 0,
  uSag: 0,
  uAt: 0,
  u: 10,
  readings: [
    [12, 0, 1],
    [3, 1, 0],
    [6, 0, -1],
    [9, -1, 0],
  ].map(([hour = 0, y = 0, z = 0]): [number, number] => {
    const arm = at - 1000
    const toward = (d.y + d.sy * arm) * y + (d.z + d.sz * arm) * z
    return [hour, (rides === 'right' ? 1 : -1) * toward + error()]
  }),
})
/** A face sweep: reading = c + (diameter/2) s . u. */
const face = (d: Line, error: () => number): ReadingSetDocument => ({
  kind: 'face',
  rides: 'right',
  diameter: 300,
  uDiameter: 0,
  sag: 0,
  uSag: 0,
  u: 10,
  readings: [
    [12, 150 * d.sz + error()],
    [3, 150 * d.sy + error()],
    [6, -150 * d.sz + error()],
    [9, -150 * d.sy + error()],
  ],
})
const line = (d: Line): ReadingSetDocument => ({
  kind: 'line',
  at: 1000,
  offset: { y: d.y, z: d.z },
  slope: { y: d.sy, z: d.sz },
  u: 5,
  uSlope: 0.02,
})

describe('two methods on one coupling', () => {
  const d = { y: 40, z: -60, sy: 0.2, sz: -0.1 }
  const exact = () => 0
  const rims = (by: Line, error = exact) => [
    rim(by, 'left', 900, error),
    rim(by, 'right', 1100, error),
  ]

  it('that read the same agree: rims and faces by their slopes, rims and a line by all four numbers', () => {
    const { coupling } = reading([...rims(d), face(d, exact), line(d)])
    const pairs = comparedMethods(coupling)
    expect(pairs.map(({ a, b }) => `${a.kind} ${b.kind}`)).toEqual([
      'rims faces',
      'rims line',
      'faces line',
    ])
    for (const { agree, squares, difference } of pairs) {
      expect(agree).toBe(true)
      expect(squares).toBeLessThan(1e-12)
      for (const value of [difference.y, difference.z, difference.sy, difference.sz])
        expect(Math.abs(value)).toBeLessThan(1e-9)
    }
  })

  it('that differ say by how much, which way, and that one is to be read again', () => {
    const { train, coupling } = reading([...rims(d), line({ ...d, z: d.z + 60 })])
    const [pair] = comparedMethods(coupling)
    expect(pair?.agree).toBe(false)
    expect(pair?.difference).toMatchObject({
      y: expect.closeTo(0, 9) as number,
      z: expect.closeTo(60, 9) as number,
    })
    // by hand: half of top less bottom is known to 10/sqrt(2) at each rim, and mid-span lies half way: sqrt(2 (10/sqrt 2)^2) / 2 = 5; with 5 of the line
    expect(pair?.squares).toBeCloseTo(60 ** 2 / (25 + 25), 6)
    const told = findingsOf(train, [asFound(coupling)]).map(({ what }) => what)
    expect(told.join('; ')).toContain(
      'a to b: the line of set 3 against the rims (sets 1 and 2): 60 µm up',
    )
    expect(told.join('; ')).toContain('read one of them again before moving anything')
  })

  it.runIf(isWhole)('are said to differ once in twenty where both are sound', () => {
    const draw = new Random(5)
    let differ = 0
    const jobs = 1000
    for (let i = 0; i < jobs; i++) {
      const error = () => 10 * normal(draw)
      const { coupling } = reading([...rims(d, error), face(d, error)])
      if (comparedMethods(coupling).some(({ agree }) => !agree)) differ++
    }
    expect(differ / jobs).toBeGreaterThan(0.03)
    expect(differ / jobs).toBeLessThan(0.07)
  })

  it('are drawn as they lie: 60 um up is up, and each ellipse as wide as its uncertainty', () => {
    const { coupling } = reading([...rims(d), line({ ...d, z: d.z + 60 })])
    const [pair] = comparedMethods(coupling)
    if (!pair) throw new Error('not compared')
    const { a, b, across } = ellipsePair(pair, 100, 1)
    expect(a.y - b.y).toBeCloseTo((60 / across) * 100, 6)
    expect(a.x).toBeCloseTo(b.x, 6)
    // 95 % of two numbers, each known to 5: sqrt(5.991) x 5
    expect((b.rx / 100) * across).toBeCloseTo(Math.sqrt(5.991) * 5, 6)
    expect(ellipsePair(pair, 100, -1).a.y).toBeCloseTo(a.y, 9)
  })
})
