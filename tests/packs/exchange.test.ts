import { describe, expect, it } from 'vitest'
import { exchange } from '../../src/engine/rounding/exchange'
import { Plates } from '../../src/engine/rounding/plates'
import { footAllowed } from '../../src/engine/rounding/shims'
import type { Foot } from '../../src/mechanics/train'
import { whole } from './store'

/**
 * Plates out and in by hand. That a pack is handled in whole plates, few and thick, and that a plate which
 * lies there is measured before it is counted on, is common practice; no source.
 */
interface Store {
  stock: number[]
  step?: number
  most?: number
  rebuild?: boolean
}

const foot = (pack?: Foot['pack']): Foot => ({
  id: '1',
  place: 'machines[0].feet[0]',
  x: 0,
  y: 0,
  mayShim: true,
  maySlide: true,
  ...(pack && { pack }),
})

const settings = ({ stock, step = 10, most = 4, rebuild = false }: Store) => ({
  step,
  stock,
  most,
  rebuild,
  flat: 25,
})

function done(store: Store, change: number, pack?: { now: number; plates?: number[] }) {
  const plates = new Plates(store.stock, store.most ?? 4)
  const one = foot(pack && { min: 0, ...pack })
  const told = exchange(settings(store), plates, one, change)
  // in less out is the change, whatever else is said
  const sum = (list: readonly number[]) => list.reduce((all, plate) => all + whole(plate), 0)
  expect(sum(told.use) - sum(told.out)).toBe(whole(change))
  for (const plate of told.use) expect(store.stock).toContain(plate)
  return [told.out, told.use]
}

describe('a pack whose plates are not known', () => {
  it('gives up what a plate of the store could be, and gets back what is too much', () => {
    expect(done({ stock: [50, 70, 100] }, -20)).toEqual([[70], [50]])
    expect(done({ stock: [20, 50] }, -30)).toEqual([[50], [20]])
  })

  it('gives up what its change is where plates of the store make that', () => {
    expect(done({ stock: [50, 100] }, -50)).toEqual([[50], []])
    expect(done({ stock: [50, 100] }, -150)).toEqual([[150], []])
    expect(done({ stock: [10, 50, 100] }, -20)).toEqual([[20], []])
  })

  it('is made anew where only that is sure: 1020 less 20 is a plate of 1000', () => {
    expect(done({ stock: [50, 100, 1000] }, -20, { now: 1020 })).toEqual([[1020], [1000]])
  })

  it('gives up no less than the thinnest plate of the store where nothing is sure', () => {
    expect(done({ stock: [50, 100] }, -20)).toEqual([[70], [50]])
    expect(done({ stock: [50, 100] }, -20, { now: 1000 })).toEqual([[70], [50]])
    // thicker than that it is left to the hand that measures
    expect(done({ stock: [50, 100] }, -120)).toEqual([[120], []])
  })

  it('never gives up more than there is', () => {
    expect(done({ stock: [50, 70] }, -20, { now: 60 })).toEqual([[20], []])
    expect(done({ stock: [50, 70] }, -20, { now: 70 })).toEqual([[70], [50]])
    expect(done({ stock: [50, 70] }, -20, { now: 20 })).toEqual([[20], []])
  })

  it('gets plates on top when it is to be thicker', () => {
    expect(done({ stock: [50, 100] }, 150, { now: 1000 })).toEqual([[], [100, 50]])
  })
})

describe('a pack whose plates are known', () => {
  const plates = [500, 100, 50, 50]
  const now = { now: 700, plates }
  const store = { stock: [50, 70, 100, 200] }

  it('gives up plates by name, as few as will do', () => {
    expect(done(store, -100, now)).toEqual([[100], []])
    expect(done(store, -150, now)).toEqual([[100, 50], []])
    expect(done(store, -500, now)).toEqual([[500], []])
    expect(done(store, -700, now)).toEqual([[500, 100, 50, 50], []])
  })

  it('exchanges plates where none that lies there is the change', () => {
    // 100 out and 70 in: one goes in; 500 out would want two
    expect(done(store, -30, now)).toEqual([[100], [70]])
  })

  it('is as thick as its plates, or they are not known', () => {
    expect(done(store, -50, { now: 750, plates })).toEqual([[50], []])
    expect(done(store, -20, { now: 750, plates })).toEqual([[70], [50]])
  })

  it('is told by name too where packs are made anew', () => {
    expect(done({ ...store, rebuild: true }, -300, now)).toEqual([plates, [200, 200]])
  })

  it('can make what some plates out and some in come to, and nothing else', () => {
    const able = (stock: number[], lying: number[]) => {
      const thick = lying.reduce((all, plate) => all + plate, 0)
      const one = foot({ now: thick, min: 0, plates: lying })
      const shims = settings({ stock, most: 1 })
      const allowed = footAllowed(shims, new Plates(stock, 1), one, 0)
      const found: number[] = []
      for (let at = allowed.down(0); at !== undefined; at = allowed.down(at - 1)) found.push(at)
      return found
    }
    expect(able([50], [500])).toEqual([0, -450, -500])
    expect(able([50, 70], [100, 50])).toEqual([0, -30, -50, -80, -100, -150])
  })
})
