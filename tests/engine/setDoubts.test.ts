import { describe, expect, it } from 'vitest'
import { bandAround, setDoubts, type SetDoubt } from '../../src/mechanics/misalignment/bands'
import type { CouplingMotion } from '../../src/mechanics/misalignment/shares'
import type { Coupling, ReadingSet } from '../../src/mechanics/train'
import { at, close, given, pair, trainOf, type Json } from './pair'

/** Uncertainties of the line found (variances of y, sy, z, sz), and of y with z together. */
const covariance = [
  [4, 0, 1, 0],
  [0, 0.0001, 0, 0],
  [1, 0, 9, 0],
  [0, 0, 0, 0.0004],
]
/** One error of the work: 0.5 um up, 0.01 mrad of pitch, and the gap 3 um wider. */
const work: CouplingMotion[] = [{ misalignment: { y: 0, sy: 0, z: 0.5, sz: 0.01 }, gap: 3 }]

/** A coupling with planes at 0 and 200 mm, its middle at 100, and this one set, unsure by 2 um (0.05 mrad). */
function read(json: Json): Coupling {
  const coupling = at(trainOf(pair({ found: [json, given(0, 0)] })).couplings, 0)
  return { ...coupling, found: [{ ...at(coupling.found, 0), u: 2, uSlope: 0.05 } as ReadingSet] }
}
const doubt = (json: Json, errors = work): SetDoubt =>
  at(setDoubts(read(json), { covariance }, errors), 0)
const roots = (...squares: number[]) => squares.map((square) => close(Math.sqrt(square), 9))
const rim = { kind: 'rim', rides: 'right', at: 100, sag: 0 }

describe('how unsure it is what a set will show', () => {
  it('of a dial set to 0 at 12, everything against that hour', () => {
    // 3: y - z: 4 + 9 - 2 * 1 of the line, 0.25 of the work, 2 * 4 of both readings; 6: -2 z: 36 + 1 + 8;
    // 9: -y - z: 4 + 9 + 2 * 1 + 0.25 + 8
    const readings = [
      [12, 0],
      [3, 5],
      [6, 7],
      [9, 5],
    ]
    expect(doubt({ ...rim, readings })).toEqual({
      kind: 'sweep',
      readings: roots(0, 19.25, 45, 23.25),
    })
  })

  it('of a dial that keeps the zero it was found with, over its mean and with the error of that', () => {
    // gains y, z: 12 (0, 1), 3 (1, 0), 6 (0, -1); their mean (1/3, 0). Off it (-1/3, 1), (2/3, 0), (-1/3, -1): of the
    // line 4/9 + 9 - 2/3, 16/9, 4/9 + 9 + 2/3; of the work 0.25, 0, 0.25; of the readings 4 (1 + 1/3)
    const readings = [
      [12, 1],
      [3, 5],
      [6, 7],
    ]
    expect(doubt({ ...rim, readings })).toEqual({
      kind: 'sweep',
      readings: roots(
        4 / 9 + 9 - 2 / 3 + 0.25 + 16 / 3,
        16 / 9 + 16 / 3,
        4 / 9 + 9 + 2 / 3 + 0.25 + 16 / 3,
      ),
    })
  })

  it('of gauges between the faces, with the gap that the work leaves', () => {
    // -100 s: 12 (sz -100), 3 (sy -100), 6 (sz +100), 9 (sy +100), mean 0. Line 1e4 * 0.0004 = 4 and 1; work
    // 3 - 1, 3, 3 + 1, 3 squared; readings 4 (1 + 1/4)
    const readings = [12, 3, 6, 9].map((hour) => [hour, 3000])
    expect(doubt({ kind: 'gap', diameter: 200, readings })).toEqual({
      kind: 'sweep',
      readings: roots(4 + 4 + 5, 1 + 9 + 5, 4 + 16 + 5, 1 + 9 + 5),
    })
  })

  it('of an offset and a slope that are given, at their place', () => {
    // 200 mm from the middle: y 4 + 4e4 * 0.0001 + 4; z 9 + 4e4 * 0.0004 + (0.5 + 200 * 0.01)^2 + 4;
    // slopes 0.0001 + 0.0025 and 0.0004 + 0.0001 + 0.0025
    const set = { kind: 'line', at: 300, offset: { y: 0, z: 0 }, slope: { y: 0, z: 0 } }
    const [y, z, sy, sz] = roots(12, 35.25, 0.0026, 0.003)
    expect(doubt(set)).toEqual({ kind: 'line', offset: { y, z }, slope: { y: sy, z: sz } })
  })

  it('of a dial off the middle, by offset and slope together, the signs of which count', () => {
    // 60 mm beyond the middle. Set to 0 at 12, which gains z + 60 sz; at 3: y + 60 sy less that. The line: 4 + 3600 *
    // 0.0001 + 9 + 3600 * 0.0004 - 2 * 1; the work: 0.4 + 60 * 0.02 - 0.5 - 60 * 0.01 = 0.5 squared; both readings 8
    const errors = [{ misalignment: { y: 0.4, sy: 0.02, z: 0.5, sz: 0.01 }, gap: 0 }]
    const readings = [
      [12, 0],
      [3, 5],
    ]
    expect(doubt({ ...rim, at: 160, readings }, errors)).toEqual({
      kind: 'sweep',
      readings: roots(0, 4 + 0.36 + 9 + 1.44 - 2 + 0.25 + 8),
    })
  })

  it('of a dial off the middle that keeps its zero, over the mean of its hours', () => {
    // gains y, sy, z, sz: 12 (0, 0, 1, 60), 3 (1, 60, 0, 0); off their mean (-1/2, -30, 1/2, 30) and turned over. The
    // line: (4 + 9 - 2) / 4 + 900 * 0.0005; the work: 0.5 + 60 * 0.01, none; the readings 4 (1 + 1/2)
    const readings = [
      [12, 1],
      [3, 5],
    ]
    expect(doubt({ ...rim, at: 160, readings })).toEqual({
      kind: 'sweep',
      readings: roots(2.75 + 0.45 + 1.21 + 6, 2.75 + 0.45 + 6),
    })
  })

  it('of errors of the work the squares add up', () => {
    // 6 against 12: -2 z of twice 0.5 um: 36 + 1 + 1 + 8
    const readings = [
      [12, 0],
      [6, 7],
      [3, 0.5],
    ]
    expect(doubt({ ...rim, readings }, [...work, ...work])).toMatchObject({
      readings: [0, close(Math.sqrt(46), 9), expect.anything()],
    })
  })
})

it('what is read by the same means again may differ by less than the line is unsure by', () => {
  const readings = [
    [12, 0],
    [6, 7],
    [3, 5],
  ]
  const again = covariance.map((row) => row.map((entry) => entry / 4))
  const [told] = setDoubts(read({ ...rim, readings }), { covariance, again }, [])
  // 36 / 4 + 8
  expect(told).toMatchObject({ readings: [0, close(Math.sqrt(17), 9), expect.anything()] })
})

it('the band of 95 of 100 is 1.96 times the uncertainty to either side', () => {
  // two-sided 95 % of a normal distribution (any table)
  expect(bandAround(10, 5)).toEqual([close(0.2, 3), close(19.8, 3)])
})
