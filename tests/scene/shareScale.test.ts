import { describe, expect, test } from 'vitest'
import { sharePlace, shareScale } from '../../src/scene/shareScale'

const scaled = (shares: readonly number[]) => {
  const scale = shareScale(shares)
  return { ...scale, place: (share: number) => sharePlace(scale, share) }
}

describe('one scale of tolerance used for a whole train', () => {
  test('what stands well is drawn on the whole tolerance, unbroken', () => {
    const { place, breakAt, ticks } = scaled([0.2, 0.61, 0.7])
    expect(breakAt).toBeUndefined()
    expect([0, 0.5, 1].map(place)).toEqual([0, 0.5, 1])
    expect(ticks).toEqual([0, 1])
  })

  test('a little over is still on one scale, to the worst', () => {
    const { place, breakAt, ticks } = scaled([0.6, 1.25])
    expect(breakAt).toBeUndefined()
    expect([0, 1, 1.25].map(place)).toEqual([0, 0.8, 1])
    expect(ticks).toEqual([0, 1, 1.25])
  })

  test('far over is behind a break, in order, and the whole tolerance keeps most of the room', () => {
    const { place, breakAt = NaN, ticks } = scaled([0.16, 0.7, 1.04, 5.5])
    const shares = [0, 0.16, 0.7, 1, 1.04, 2.9, 5.5]
    const places = shares.map(place)
    expect(places).toEqual([...places].sort((a, b) => a - b))
    expect(new Set(places).size).toBe(shares.length)
    expect(place(1)).toBeGreaterThan(0.6)
    expect(place(1)).toBeLessThan(breakAt)
    expect(place(1.04)).toBeGreaterThan(breakAt)
    expect(place(5.5)).toBe(1)
    // half the tolerance lies half way to the whole of it
    expect(place(0.5)).toBeCloseTo(place(1) / 2, 12)
    expect(ticks).toEqual([0, 1, 5.5])
  })
})
