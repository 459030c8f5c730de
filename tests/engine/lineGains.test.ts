import { expect, it } from 'vitest'
import { asFound } from '../../src/mechanics/readings/asFound'
import { lineGains } from '../../src/mechanics/readings/lineGains'
import type { ReadingSet } from '../../src/mechanics/train'
import { at, close, given, pair, trainOf } from './pair'

const near = (...values: number[]) => values.map((value) => close(value, 9))

it('a line measured twice follows each as it is weighed', () => {
  const coupling = at(trainOf(pair({ found: [given(0, 0), given(0, 0)] })).couplings, 0)
  const [one, other] = coupling.found
  // weights 1/u^2: 1/100 and 1/400 of offsets, 4 to 1; 1/0.04 and 1/0.01 of slopes, 1 to 4
  const found = [
    { ...one, u: 10, uSlope: 0.2 } as ReadingSet,
    { ...other, u: 20, uSlope: 0.1 } as ReadingSet,
  ]
  // values in order: offsets y and z, slopes y and z, of each; the line: y, sy, z, sz
  expect(lineGains({ ...coupling, found })).toEqual([
    near(0.8, 0, 0, 0, 0.2, 0, 0, 0),
    near(0, 0, 0.2, 0, 0, 0, 0.8, 0),
    near(0, 0.8, 0, 0, 0, 0.2, 0, 0),
    near(0, 0, 0, 0.2, 0, 0, 0, 0.8),
  ])
})

it('an offset is carried from its place to the middle by the slope', () => {
  const coupling = at(trainOf(pair({ found: [given(0, 0)] })).couplings, 0)
  const found = coupling.found.map((set) => ({ ...set, at: 200, u: 10, uSlope: 0.1 }) as ReadingSet)
  // the place lies 100 mm beyond the middle
  expect(lineGains({ ...coupling, found })).toEqual([
    near(1, 0, -100, 0),
    near(0, 0, 1, 0),
    near(0, 1, 0, -100),
    near(0, 0, 0, 1),
  ])
})

it('two rims at the planes: their gains times what was read are the line', () => {
  const readings = [
    [12, 0],
    [3, 20],
    [6, 60],
    [9, 40],
  ]
  const found = [
    { kind: 'rim', rides: 'left', at: 0, sag: 0, readings },
    { kind: 'rim', rides: 'right', at: 200, sag: 0, readings },
  ]
  const coupling = at(trainOf(pair({ found })).couplings, 0)
  const values = [...readings, ...readings].map(([, value = NaN]) => value)
  // up: half of 12 less 6, -30 at the right rim and 30 at the left one, 200 mm apart: 0 at the middle, -60/200;
  // sideways half of 3 less 9: -10 and 10
  const line = lineGains(coupling).map((gains) =>
    gains.reduce((sum, gain, i) => sum + gain * (values[i] ?? NaN), 0),
  )
  expect(line).toEqual(near(0, -0.1, 0, -0.3))
  const { y, sy, z, sz } = asFound(coupling).line
  expect([y, sy, z, sz]).toEqual(near(0, -0.1, 0, -0.3))
})

it('readings that leave a number of the line open have no gains', () => {
  const coupling = at(trainOf(pair({ found: [given(0, 0)] })).couplings, 0)
  const found = coupling.found.map((set) => ({ ...set, offset: { y: 0 } }) as ReadingSet)
  const open = 'readings of c leave its line open'
  expect(() => lineGains({ ...coupling, found })).toThrow(new RangeError(open))
  expect(() => asFound({ ...coupling, found })).toThrow(new RangeError(open))
})
