import { describe, expect, it } from 'vitest'
import { asFound, besideLine } from '../../src/mechanics/readings/asFound'
import { outward } from '../../src/mechanics/readings/clock'
import { closure } from '../../src/mechanics/readings/closure'
import { equationsOf } from '../../src/mechanics/readings/equation'
import { expectedSets } from '../../src/mechanics/readings/expected'
import { svd } from '../../src/mechanics/readings/svd'
import { readingGains } from '../../src/mechanics/readings/gains'
import { readingSystem } from '../../src/mechanics/readings/system'
import type { Coupling, ReadingSet } from '../../src/mechanics/train'
import { at, close, given, pair, trainOf, type Json } from './pair'

const near = (...values: number[]) => values.map((value) => close(value, 9))

/** Planes at 0 and 200 mm, the middle at 100; every set unsure by 10 um and 0.1 mrad. A line is among them. */
function read(...found: readonly Json[]): Coupling {
  const coupling = at(trainOf(pair({ found: [...found, given(0, 0)] })).couplings, 0)
  const sets = coupling.found.map((set) => ({ ...set, u: 10, uSlope: 0.1 }) as ReadingSet)
  return { ...coupling, found: sets }
}
const rim = (readings: readonly (readonly [number, number])[], more: Json = {}): Json => ({
  ...{ kind: 'rim', rides: 'right', at: 100, sag: 0, ...more },
  readings,
})
const d = { y: 30, sy: 0.2, z: -20, sz: -0.1 }

it('the four quarter hours are exact', () => {
  expect([12, 3, 6, 9].map(outward)).toEqual([
    { y: 0, z: 1 },
    { y: 1, z: 0 },
    { y: 0, z: -1 },
    { y: -1, z: 0 },
  ])
  // 2 o'clock is 60 degrees from the top toward 3
  expect(outward(2)).toEqual({ y: close(Math.sqrt(3) / 2, 12), z: close(0.5, 12) })
})

describe('closure', () => {
  const hours = [
    [12, 1],
    [3, 20],
    [6, 300],
    [9, 4000],
  ] as const

  it('is top and bottom less both sides', () => {
    expect(closure(at(read(rim(hours)).found, 0))).toBe(1 + 300 - 20 - 4000)
  })

  it.each([0, 1, 2, 3])('is none without the hour of place %i', (left) => {
    const short = hours.filter((_, i) => i !== left)
    expect(closure(at(read(rim(short)).found, 0))).toBeUndefined()
  })

  it('is none of a line', () => {
    expect(closure(at(read().found, 0))).toBeUndefined()
  })
})

it('a spool answers by its own span, wherever along the train it lies', () => {
  const readings = [
    [12, 0],
    [6, 0],
  ]
  const spool = { kind: 'spool', end: 'left', diameter: 100, sag: 0, readings }
  const coupling = { ...read(spool), p: 1000, q: 1200, mid: 1100 }
  const [top] = equationsOf(at(coupling.found, 0), coupling)
  // D / (2 span) = 0.25 of the offset, D / 4 = 25 mm of the slope
  expect(top?.raw).toEqual(near(0, 0, 0.25, 25))
})

describe('the line as found', () => {
  it('is as unsure as an offset carried from its place by the slope', () => {
    const coupling = read()
    const found = [{ ...at(coupling.found, 0), at: 200 } as ReadingSet]
    // y = offset - 100 slope: 10^2 + 100^2 * 0.1^2; together with the slope -100 * 0.1^2
    const { covariance } = asFound({ ...coupling, found })
    expect(covariance).toEqual([
      near(200, -1, 0, 0),
      near(-1, 0.01, 0, 0),
      near(0, 0, 200, -1),
      near(0, 0, -1, 0.01),
    ])
  })

  it('has the zero that its turn stands on, and what is left over', () => {
    // a dial that stands on 7 sees a right shaft 30 low, 7 - 30 and 7 + 30; the line given says 0
    const coupling = read(
      rim([
        [12, -23],
        [6, 37],
      ]),
    )
    const { line, zeros, residual } = asFound(coupling)
    // dial: two readings of 10, half their difference has 10 / sqrt 2; the line 10: weights 2 to 1
    expect([line.y, line.sy, line.z, line.sz]).toEqual(near(0, 0, -20, 0))
    expect(zeros).toEqual(near(7, 0))
    // left over: 10 and 10 of the dial, 20 of the line, over 10, six values: (1 + 1 + 4) / 6
    expect(residual).toBeCloseTo(1, 9)
  })
})

it('a turn that is read on one side alone stands on what is left over of it', () => {
  const coupling = read(
    rim([
      [12, 50],
      [3, 90],
    ]),
  )
  // the line shows -20 at 12 and 30 at 3: left over 70 and 60, their mean 65; 5 of each, over 10, and 30, 20 um, 0.2 and
  // 0.1 mrad of the line given, over 10 um and 0.1 mrad
  const { zeros, residual } = besideLine(coupling, d)
  expect(zeros).toEqual(near(65, 0))
  expect(residual).toBeCloseTo(Math.sqrt((0.25 + 0.25 + 9 + 4 + 4 + 1) / 6), 9)
})

it('what a reading gains from the line is free of sag', () => {
  const coupling = read(rim([[12, 0]], { at: 160, sag: 20 }))
  const set = at(coupling.found, 0)
  if (set.kind !== 'rim') throw new Error('no rim')
  expect(readingGains(set, coupling, 12)).toEqual(near(0, 0, 1, 60))
  expect(readingGains(set, coupling, 9)).toEqual(near(-1, -60, 0, 0))
})

describe('what is expected after the moves', () => {
  const expectedOf = (json: Json, gap: number) => {
    const coupling = read(json)
    return at(expectedSets(coupling, asFound(coupling), d, gap), 0)
  }

  it('of a line, at its place', () => {
    const line = { kind: 'line', at: 150, offset: { y: 0, z: 0 }, slope: { y: 0, z: 0 } }
    const [y, z, sy, sz] = near(40, -25, 0.2, -0.1)
    expect(expectedOf(line, 500)).toEqual({
      kind: 'line',
      offset: { y, z },
      slope: { y: sy, z: sz },
    })
  })

  it('of a dial: the first 0 stays, another zero is the one it was found with, whatever the gap does', () => {
    const values = (first: number) => {
      const set = rim([
        [12, first],
        [3, first],
        [6, first],
      ])
      const told = expectedOf(set, 500)
      return told.kind === 'sweep' ? told.readings.map(({ hour, value }) => [hour, value]) : []
    }
    // -20, 30, 20 about the zero
    expect(values(0)).toEqual([near(12, 0), near(3, 50), near(6, 40)])
    expect(values(5)).toEqual([near(12, -15), near(3, 35), near(6, 25)])
  })

  it('of gauges: their zero goes along with the gap', () => {
    const set = { kind: 'gap', diameter: 200, readings: [12, 3, 6, 9].map((hour) => [hour, 3000]) }
    // -100 s: 10, -20, -10, 20
    expect(expectedOf(set, 500)).toEqual({
      kind: 'sweep',
      readings: [
        { hour: 12, value: close(3510, 9) },
        { hour: 3, value: close(3480, 9) },
        { hour: 6, value: close(3490, 9) },
        { hour: 9, value: close(3520, 9) },
      ],
    })
  })
})

describe('singular values', () => {
  it('of columns (3, 4) and (0, 5) are the roots of 45 and 5 (textbook), with orthonormal right vectors', () => {
    const columns = [
      [3, 4],
      [0, 5],
    ]
    const { values, left, right } = svd(columns)
    expect(values.toSorted((a, b) => b - a)).toEqual(near(Math.sqrt(45), Math.sqrt(5)))
    const half = Math.SQRT1_2
    expect(right.flat().map(Math.abs)).toEqual(near(half, half, half, half))
    // each right vector turns the columns into its left one
    expect(left).toEqual(right.map(([a = NaN, b = NaN]) => near(3 * a, 4 * a + 5 * b)))
  })

  it('of columns that are one another is 0 once', () => {
    const { values } = svd([
      [1, 2],
      [1, 2],
    ])
    expect(values.toSorted((a, b) => a - b)).toEqual(near(0, Math.sqrt(10)))
  })
})

it('readings leave open what none of them sees', () => {
  const coupling = read()
  const without = (offset: Json, slope: Json): number =>
    readingSystem({
      ...coupling,
      found: coupling.found.map((set) => ({ ...set, offset, slope }) as ReadingSet),
    }).open.length
  expect(without({ y: 0, z: 0 }, { y: 0, z: 0 })).toBe(0)
  expect(without({ y: 0 }, { y: 0, z: 0 })).toBe(1)
  expect(without({ y: 0 }, { z: 0 })).toBe(2)
  expect(without({}, { z: 0 })).toBe(3)
})

it('two turns in one plane leave both slopes open, to the last digit', () => {
  const hours = [12, 2, 5].map((hour) => [hour, 0] as const)
  const coupling = read(rim(hours, { at: 133.3 }), rim(hours, { at: 133.3, rides: 'left' }))
  const open = (...found: readonly ReadingSet[]) => readingSystem({ ...coupling, found }).open
  const [one, other] = [at(coupling.found, 0), at(coupling.found, 1)]
  expect(open(one, other)).toHaveLength(2)
  expect(open(one, { ...other, at: 134 } as ReadingSet)).toHaveLength(0)
})
