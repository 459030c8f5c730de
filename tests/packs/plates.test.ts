import { describe, expect, it } from 'vitest'
import { Plates } from '../../src/engine/rounding/plates'
import { inchSet, metricSet } from './shimmed'
import { everySum, whole } from './store'

/**
 * Shim vectors S1 and S2 (constructed from the trade's pre-cut inch and metric sets, published-values
 * 3.3 and 8.7): the fewest plates for a thickness.
 */
const mil = 25.4
const inch = new Plates(
  inchSet.map((t) => t * mil),
  4,
)
const metric = new Plates(metricSet, 4)

describe('fewest plates', () => {
  it.each([
    [7, 2],
    [13, 2],
    [37, 3],
    [66, 3],
    [87, 3],
    [143, 3],
    [156, 4],
  ])('S1: %d mil takes %d', (thickness, pieces) => {
    expect(inch.fewest(thickness * mil)).toHaveLength(pieces)
  })

  it('S1: every whole mil to 150 takes at most 3, to 200 at most 4, and 156 is the first with 4', () => {
    const pieces = (thickness: number) => inch.fewest(thickness * mil)?.length ?? Infinity
    const all = Array.from({ length: 200 }, (_, i) => pieces(i + 1))
    expect(Math.max(...all.slice(0, 150))).toBe(3)
    expect(Math.max(...all)).toBe(4)
    expect(all.findIndex((n) => n === 4) + 1).toBe(156)
  })

  it.each([
    [150, 2],
    [350, 2],
    [650, 2],
    [950, 2],
    [1450, 3],
    [2850, 4],
  ])('S2: %d um takes %d', (thickness, pieces) => {
    expect(metric.fewest(thickness)).toHaveLength(pieces)
  })

  it('S2: every multiple of 0.05 mm to 2.85 mm can be made, and nothing else', () => {
    for (let thickness = 10; thickness <= 2850; thickness += 10)
      expect(metric.fewest(thickness) !== undefined, `${thickness} um`).toBe(thickness % 50 === 0)
  })

  it.each([
    ['inch', inchSet.map((t) => t * mil), 4],
    ['metric', metricSet, 4],
    ['metric, three plates', metricSet, 3],
    ['odd', [30, 70, 110, 250], 6],
    ['two plates', [125, 200, 300], 2],
    ['one plate', [125, 200, 300], 1],
  ] as const)('is that of all multisets, one by one: %s', (_, stock, most) => {
    const plates = new Plates(stock, most)
    const every = everySum(stock.map(whole), most)
    expect(plates.sums.length).toBe(every.size)
    for (const [sum, pieces] of every) {
      const pack = plates.fewest(sum / 100)
      expect(pack, `${sum / 100} um`).toHaveLength(pieces)
      expect(pack?.reduce((all, plate) => all + whole(plate), 0)).toBe(sum)
      for (const plate of pack ?? []) expect(stock.map(whole)).toContain(whole(plate))
    }
  })

  it.each<[number, number[], number[]]>([
    [200, [50, 100, 150], [100, 100]],
    [300, [50, 100, 150, 250], [150, 150]],
    [600, [50, 100, 200, 400], [400, 200]],
    [700, [100, 200, 300, 500], [500, 200]],
    [600, [100, 200, 300, 450], [300, 300]],
    [900, [100, 300, 400, 500], [500, 400]],
    [900, [100, 300, 350, 450, 500], [450, 450]],
    [900, [200, 300, 350, 400], [300, 300, 300]],
  ])('of equally many takes equal plates: %d um of %j', (thickness, stock, pack) => {
    expect(new Plates(stock, 4).fewest(thickness)).toEqual(pack)
  })

  it('S1, S2: no pack as short has fewer thicknesses, all multisets one by one', () => {
    const kinds = (pack: readonly number[]) => new Set(pack).size
    for (const [plates, stock, unit] of [
      [inch, inchSet.map((t) => t * mil), mil],
      [metric, metricSet, 50],
    ] as const) {
      const fewestKinds = new Map<number, { pieces: number; kinds: number }>()
      const add = (first: number, pack: number[]) => {
        const sum = pack.reduce((all, plate) => all + whole(plate), 0)
        const was = fewestKinds.get(sum)
        const by = was ? pack.length - was.pieces || kinds(pack) - was.kinds : -1
        if (by < 0) fewestKinds.set(sum, { pieces: pack.length, kinds: kinds(pack) })
        if (pack.length < 4)
          for (let i = first; i < stock.length; i++) add(i, [...pack, stock[i] ?? 0])
      }
      add(0, [])
      for (let n = 1; n <= 57; n++) {
        const pack = plates.fewest(n * unit)
        expect(pack && { pieces: pack.length, kinds: kinds(pack) }, `${n}`).toEqual(
          fewestKinds.get(whole(n * unit)),
        )
      }
    }
  })

  it('has no pack for what is thinner than the thinnest or thicker than all together', () => {
    expect(metric.fewest(25)).toBeUndefined()
    expect(metric.fewest(8050)).toBeUndefined()
    expect(metric.fewest(8000)).toEqual([2000, 2000, 2000, 2000])
    expect(metric.fewest(0)).toEqual([])
  })
})
