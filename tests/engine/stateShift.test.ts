import { describe, expect, it } from 'vitest'
import { checksOf } from '../../src/mechanics/misalignment/check'
import { settingBeside } from '../../src/mechanics/misalignment/settingBeside'
import { sharesOf, worstShare } from '../../src/mechanics/misalignment/shares'
import { stateShift } from '../../src/mechanics/misalignment/stateShift'
import { asFound } from '../../src/mechanics/readings/asFound'
import type { Aim, Train } from '../../src/mechanics/train'
import { at, close, given, pair, trainOf, type Json } from './pair'

/**
 * Planes at 0 and 200 mm, the middle at 100. The right end of the left machine rises 10 um at 0 and 0.02 mrad, goes 30
 * toward 3 and 0.04 mrad, and 5 along; the left end of the right machine 90 up at 100 and 0.05, 50 toward 9 and
 * 0.03, 25 along. What their other ends do is not asked for.
 */
const growth = (axis: string, ...points: Json[]): Json[] => [
  ...points.map((point) => ({ ...point, axis })),
  { at: 0, rise: 7000, side: 7000, axial: 7000, axis: axis === 'left' ? 'right' : 'left' },
]
const left = {
  hot: growth(
    'right',
    { at: 0, rise: 10, side: 30, axial: 5 },
    { at: 1000, rise: 30, side: 70, axial: 5 },
  ),
}
const right = {
  hot: growth(
    'left',
    { at: 100, rise: 90, side: -50, axial: 25 },
    { at: 1100, rise: 140, side: -20, axial: 25 },
  ),
}
const states = [
  { id: 'cold', name: 'Cold' },
  { id: 'hot', name: 'Hot', tolerance: 2 },
]
const train = (coupling: Json = {}): Train =>
  trainOf(
    pair({
      left: { growth: left },
      right: { growth: right },
      found: [given(1, 2, 0.1, 0.2)],
      coupling: { tolerance: { offset: 100, angle: 1 }, ...coupling },
      rest: { states },
    }),
  )
const shiftOf = (of: Train) => {
  const { misalignment, gap } = stateShift(of, at(of.couplings, 0), 'hot')
  return [misalignment.y, misalignment.sy, misalignment.z, misalignment.sz, gap]
}
const near = (...values: number[]) => values.map((value) => close(value, 9))
const setting = { offset: { y: -60, z: 300 }, slope: { y: 0.5, z: 0.25 } }

describe('what a state does to a coupling', () => {
  it('is what the right machine grows at its left end, less what the left one does at its right', () => {
    // y -50 - (30 + 0.04 * 100); z 90 - (10 + 0.02 * 100); slopes 0.03 - 0.04 and 0.05 - 0.02; gap 25 - 5
    expect(shiftOf(train())).toEqual(near(-84, -0.01, 78, 0.03, 20))
  })

  it('less what is aimed at there', () => {
    const aim = { hot: { offset: { y: 6, z: 8 }, slope: { y: 0.25, z: 0.125 } } }
    expect(shiftOf(train({ aim }))).toEqual(near(-90, -0.26, 70, -0.095, 20))
  })

  it('is a cold setting that is used, taken off, and growth along the train alone', () => {
    const used = train({ setting: { ...setting, use: true, why: 'measured on the test stand' } })
    expect(shiftOf(used)).toEqual(near(60, -0.5, -300, -0.25, 20))
  })

  it('of a coupling that joins no machines is told by its name', () => {
    const read = train()
    for (const lost of [{ left: 9 }, { right: 9 }])
      expect(() => stateShift(read, { ...at(read.couplings, 0), ...lost }, 'hot')).toThrow(
        new RangeError('coupling c joins no machines'),
      )
  })
})

describe('shares', () => {
  const axial = { found: 250.5, want: 250, tolerance: 1 }

  it('count the gap as found, as grown and as moved', () => {
    const read = train({ axial })
    const moved = [{ misalignment: { y: 0, sy: 0, z: 0, sz: 0 }, gap: 300 }]
    const [cold, hot] = sharesOf(read, read.couplings.map(asFound), moved)
    // 0.5 and 0.3 mm of 1; 20 um more of twice that
    expect(cold?.checks.at(-1)).toMatchObject({ what: 'gap', x: close(0.8), share: close(0.8) })
    expect(hot?.checks.at(-1)).toMatchObject({ x: close(0.82), limit: 2, share: close(0.41) })
  })

  it('of all couplings and states: the largest one', () => {
    const read = train()
    const shares = sharesOf(read, read.couplings.map(asFound))
    // cold: offset 2 of 100, slope 0.2 of 1; hot: y 1 - 84 of 200, slope 0.23 of 2
    expect(shares.map(({ share }) => share)).toEqual(near(0.2, 0.415))
    expect(worstShare(shares)).toBeCloseTo(0.415, 12)
  })

  it('of a coupling without a line are none', () => {
    expect(() => sharesOf(train(), [])).toThrow(new RangeError('coupling c was not reduced'))
  })
})

it('the angles at two planes go by their span, wherever along the train it lies', () => {
  const coupling = at(train({ tolerance: { flex: 0.5 } }).couplings, 0)
  const checks = checksOf({ ...coupling, p: 1000, q: 1200, mid: 1100 })
  expect(checks.map(({ offset, lever }) => [offset, lever])).toEqual([
    near(1 / 200, 200),
    near(-1 / 200, 200),
  ])
})

describe('a cold setting beside what growth asks for', () => {
  const beside = (of: Train) => settingBeside(of, at(of.couplings, 0))?.growthAsks ?? []

  it('is told with the line that a state would find right, and the difference', () => {
    const [, hot] = beside(train({ setting }))
    const told = (line?: Aim) => [line?.y, line?.sy, line?.z, line?.sz]
    expect(told(hot?.asks)).toEqual(near(84, 0.01, -78, -0.03))
    // -60 - 84, 0.5 - 0.01, 300 + 78, 0.25 + 0.03
    expect(told(hot?.by)).toEqual(near(-144, 0.49, 378, 0.28))
    // 378 of 200
    expect(hot?.share).toBeCloseTo(1.89, 12)
    expect(hot?.grown).toBe(true)
  })

  it.each([
    ['a rise at the end that it meets', { rise: 0, axis: 'left' }, true],
    ['a slide at the end that it meets', { side: 0, axis: 'left' }, true],
    ['a rise of the whole axis', { rise: 5 }, true],
    ['a rise at the other end', { rise: 5, axis: 'right' }, false],
    ['growth along the train', { axial: 5, axis: 'left' }, false],
  ])('grows across by %s', (_, point, grown) => {
    const read = trainOf(
      pair({
        right: { growth: { hot: [{ at: 100, ...point }] } },
        found: [given(0, 0)],
        coupling: { tolerance: { offset: 100 }, setting },
        rest: { states },
      }),
    )
    expect(beside(read).map((state) => state.grown)).toEqual([false, grown])
  })

  it('is none where the coupling has none', () => {
    const read = train()
    expect(settingBeside(read, at(read.couplings, 0))).toBeUndefined()
  })
})
