import { describe, expect, it } from 'vitest'
import { footBands } from '../../src/mechanics/footLimits'
import { holeRadius } from '../../src/mechanics/holeRadius'
import { packRange, platesAddUp } from '../../src/mechanics/packRange'
import { tol } from '../../src/mechanics/tolerances'
import type { Foot } from '../../src/mechanics/train'

const free: Foot = { id: '1', place: 'a', x: 0, y: 0, mayShim: true, maySlide: true }
const bands = (more: Partial<Foot>) =>
  footBands({ ...free, ...more }).map(({ fact, move, low, high }) => [fact, move, low, high])

describe('how far the limits of a foot let it move (um, up and toward 3 o’clock)', () => {
  it('a foot that nothing limits has no band', () => {
    expect(bands({})).toEqual([])
  })

  it.each([
    // 3000 now: down to 2950, up to 3200
    [{ now: 3000, min: 2950, max: 3200 }, -50, 200],
    [{ now: 3000, min: 2950 }, -50, Infinity],
    // under its least or over its most: no further
    [{ now: 3000, min: 4000, max: 5000 }, 0, 2000],
    [{ now: 3000, min: 1000, max: 2000 }, -2000, 0],
  ])('pack %j: from %s to %s', (pack, low, high) => {
    expect(packRange(pack)).toEqual([low, high])
    expect(bands({ pack })).toEqual([['pack', 'shim', low, high]])
  })

  it('a lift bounds upward alone; one that is passed lets it no higher', () => {
    expect(bands({ lift: 60 })).toEqual([['lift', 'shim', -Infinity, 60]])
    expect(bands({ lift: -60 })).toEqual([['lift', 'shim', -Infinity, 0]])
    expect(bands({ lift: 0 })).toEqual([['lift', 'shim', -Infinity, 0]])
  })

  it('keys hold it where it is, each its own move', () => {
    expect(bands({ mayShim: false })).toEqual([['shim key', 'shim', 0, 0]])
    expect(bands({ maySlide: false })).toEqual([['side key', 'side', 0, 0]])
  })

  it('all at once stand beside each other', () => {
    const all = { pack: { now: 3000, min: 2950 }, lift: 60, mayShim: false, maySlide: false }
    expect(bands(all).map(([fact]) => fact)).toEqual(['pack', 'lift', 'shim key', 'side key'])
  })
})

describe('the circle that the centre of a hole may not leave', () => {
  const hole = { clearance: 1500, x: 300, y: -400, centred: false }

  it('is half the clearance less the reserve', () => {
    expect(holeRadius(hole, 50)).toBe(700)
  })

  it('is where the bolt stands, where that is beyond it already', () => {
    // 500 = root of 300 and 400 squared; 750 - 350 = 400
    expect(holeRadius(hole, 350)).toBe(500)
  })
})

describe('plates that were entered for a pack', () => {
  it('make it where they add up, to the last digit of each of them and of the pack', () => {
    expect(platesAddUp({ now: 1200, min: 0, plates: [1000, 200] })).toBe(true)
    expect(platesAddUp({ now: 1201, min: 0, plates: [1000, 200] })).toBe(false)
    expect(platesAddUp({ now: 1199, min: 0, plates: [1000, 200] })).toBe(false)
    const room = 3 * tol.plateSum
    expect(platesAddUp({ now: 1200 + room * 0.9, min: 0, plates: [1000, 200] })).toBe(true)
    expect(platesAddUp({ now: 1200 + room * 1.1, min: 0, plates: [1000, 200] })).toBe(false)
  })

  it('make none where none were entered', () => {
    expect(platesAddUp({ now: 0, min: 0 })).toBe(false)
    expect(platesAddUp({ now: 0, min: 0, plates: [] })).toBe(true)
  })
})
