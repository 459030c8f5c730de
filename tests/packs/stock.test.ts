import { describe, expect, it } from 'vitest'
import { nanometres, Plates } from '../../src/engine/rounding/plates'

const sums = (stock: readonly number[], most: number, limit?: number) =>
  new Plates(stock, most, limit).sums.map((sum) => sum / 1000)

describe('a store of plates (um), by hand', () => {
  it('makes every sum of so many plates, and nothing of a plate of no thickness', () => {
    expect(sums([100, 30, 100], 2)).toEqual([30, 60, 100, 130, 200])
    expect(sums([0, -50, 100], 2)).toEqual([100, 200])
  })

  it('makes nothing thicker than is wanted, but that itself', () => {
    expect(sums([100], 4, 250)).toEqual([100, 200])
    expect(sums([100], 4, 300)).toEqual([100, 200, 300])
  })

  it('names the plates of a pack from the thickest, in whatever order they were entered', () => {
    expect(new Plates([50, 200, 100], 3).fewest(350)).toEqual([200, 100, 50])
  })

  it('takes alike plates before two kinds, and the thickest of packs that are as good', () => {
    // 4 of two: 3 + 1 or 2 + 2
    expect(new Plates([1, 2, 3], 2).fewest(4)).toEqual([2, 2])
    // 5 of two: 4 + 1 or 3 + 2
    expect(new Plates([1, 2, 3, 4], 2).fewest(5)).toEqual([4, 1])
  })

  it('counts the plates of the shortest pack: none of no thickness, and none where it cannot be made', () => {
    const store = new Plates([100, 30], 2)
    const pieces = [0, 30, 130, 160].map((thickness) => store.pieces(nanometres(thickness)))
    expect(pieces).toEqual([0, 1, 2, undefined])
    expect([store.fewest(0), store.fewest(160)]).toEqual([[], undefined])
  })
})
