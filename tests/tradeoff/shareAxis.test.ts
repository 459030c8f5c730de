import { describe, expect, it } from 'vitest'
import { axisEnds, axisStart, changeOf, axisPlace, shareAxis } from '../../src/app/ledger/shareAxis'

const curve = (floor: number, standing: number) => ({
  points: [
    { share: floor, cost: 100 },
    { share: standing, cost: 0 },
  ],
  floor,
  standing,
  noRoom: 0.85,
})

/** Floors and as-found shares as trains have them: near, over, far over the whole tolerance. */
const trains: [floor: number, standing: number, asked: number][] = [
  [0.42, 0.61, 0.7],
  [0.6, 1.2, 0.7],
  [0.63, 5.5, 0.7],
  [1.1, 1.2, 0.7],
  [1.1, 4, 0.7],
  [3.72, 5.5, 0.7],
  [2.53, 7.54, 0.7],
  [40, 41, 0.3],
  [0.02, 30, 1],
]

describe.each(trains)(
  'the axis for a floor of %f, as found %f, %f asked',
  (floor, standing, asked) => {
    const tradeoff = curve(floor, standing)
    const axis = shareAxis(tradeoff, axisStart(tradeoff, asked))

    it('has every share that is marked on it, in order', () => {
      const [from, to] = axisEnds(axis)
      for (const share of [floor, standing, asked, 0.85, 1]) {
        expect(share).toBeGreaterThanOrEqual(from)
        expect(share).toBeLessThanOrEqual(to)
      }
      const places = [from, asked, 0.85, 1, floor, standing, to]
        .sort((a, b) => a - b)
        .map((share) => axisPlace(axis, share))
      expect(places).toEqual([...places].sort((a, b) => a - b))
      expect(places[0]).toBe(0)
      expect(places.at(-1)).toBe(1)
    })

    it('gives what one can ask for at least two fifths of its width', () => {
      expect(axisPlace(axis, 1) - axisPlace(axis, axisEnds(axis)[0])).toBeGreaterThan(0.4)
    })

    it('keeps one scale between two ticks that have no change between them', () => {
      expect(axis.ticks.length).toBeGreaterThan(1)
      expect(axis.ticks.length).toBeLessThan(8)
      const change = changeOf(axis)
      for (const { shares, places } of axis.stretches) {
        const middle = (shares[0] + shares[1]) / 2
        expect(axisPlace(axis, middle)).toBeCloseTo((places[0] + places[1]) / 2, 9)
      }
      expect(change === undefined).toBe(standing <= 1.25)
    })
  },
)

it('tells a floor of 372 % from the shares that can be asked for by a cut in the axis', () => {
  const axis = shareAxis(curve(3.72, 5.5), 0.65)
  const change = changeOf(axis)
  expect((change?.[1] ?? 0) - (change?.[0] ?? 0)).toBeGreaterThan(0.03)
  expect(axisPlace(axis, 3.72)).toBeGreaterThan(change?.[1] ?? 1)
})
