import { describe, expect, it } from 'vitest'
import { residualTest } from '../../src/mechanics/readings/residualTest'
import type { Coupling, ReadingSet } from '../../src/mechanics/train'
import { at, close, given, pair, trainOf, type Json } from './pair'

/** A coupling with planes at 0 and 200 mm, read by these sets, every one unsure by 10 um and 0.1 mrad. */
function read(found: readonly Json[]): Coupling {
  const coupling = at(trainOf(pair({ found })).couplings, 0)
  const sets = coupling.found.map((set) => ({ ...set, u: 10, uSlope: 0.1 }) as ReadingSet)
  return { ...coupling, found: sets }
}
const places = (list: readonly { readonly set: number; readonly index: number }[] = []) =>
  list.map(({ set, index }) => [set, index])

describe('two full turns of four hours, one reading of the second off by some standard uncertainties', () => {
  // what a turn leaves over is (1, -1, 1, -1) / 2, so that an error e leaves e/4 at each hour, whose standard deviation is
  // u/2: w = e / 2u. Two turns are two tests: 0.05 / 2, both sides, 2.2414 (table of the normal distribution)
  const off = (by: number) =>
    residualTest(
      read([
        { kind: 'rim', rides: 'left', at: 0, sag: 0, readings: turn(0) },
        { kind: 'rim', rides: 'right', at: 200, sag: 0, readings: turn(10 * by) },
      ]),
    )
  const turn = (by: number) => [12, 3, 6, 9].map((hour) => [hour, hour === 6 ? by : 0])

  it('is not accused within the limit', () => {
    const test = off(4.4)
    expect(test?.limit).toBeCloseTo(2.2414, 2)
    expect([test?.risk, test?.worst, test?.alike]).toEqual([0.05, undefined, []])
  })

  it.each([
    // the other turn has w = 0, and is told apart from 1.645 * sqrt(2) = 2.326 on
    [4.6, [0, 1]],
    [4.8, [1]],
  ])('is accused at %s, with all hours of the turns %j', (by, turns) => {
    const test = off(by)
    expect(Math.abs(test?.worst?.w ?? 0)).toBeCloseTo(by / 2, 9)
    expect(test?.worst?.set).toBe(1)
    expect(test?.worst?.redundancy).toBeCloseTo(0.25, 9)
    expect(
      places([...(test?.worst ? [test.worst] : []), ...(test?.alike ?? [])]).toSorted(),
    ).toEqual(turns.flatMap((set) => [0, 1, 2, 3].map((index) => [set, index])))
  })
})

describe('a line that was measured three times, one offset up off by some standard uncertainties', () => {
  // the mean is d/3: left over are -d/3, -d/3, 2d/3, each of variance 2/3 u^2, each two correlated by -1/2. w of the one
  // is 0.81650 d/u, of the others half of it. Twelve values are twelve tests: 0.05 / 12, both sides, 2.8653
  // (table of the normal distribution); told apart from 1.645 * sqrt(2 * 1/2) on: 0.40825 d/u, at 4.03
  const off = (by: number) => residualTest(read([given(0, 0), given(0, 0), given(0, 10 * by)]))

  it.each([3.5, -3.5])('is not accused at %s', (by) => {
    const test = off(by)
    expect(test?.limit).toBeCloseTo(2.8653, 2)
    expect([test?.worst, test?.alike]).toEqual([undefined, []])
  })

  it.each([3.6, 4, -4])('is accused at %s, and cannot be told from the two others', (by) => {
    const test = off(by)
    expect(test?.worst).toEqual({
      set: 2,
      index: 1,
      i: 9,
      redundancy: close(2 / 3, 9),
      w: close(Math.sqrt(2 / 3) * by, 9),
    })
    expect(places(test?.alike)).toEqual([
      [0, 1],
      [1, 1],
    ])
  })

  it.each([4.1, -6])('is named at %s', (by) => {
    const test = off(by)
    expect([test?.worst?.set, test?.worst?.index, test?.alike]).toEqual([2, 1, []])
  })

  it('is none where it is not used', () => {
    const coupling = read([given(0, 60), given(0, 0), given(0, 0), given(0, 0)])
    const [first, ...others] = coupling.found
    const found = [{ ...first, used: false } as ReadingSet, ...others]
    expect(residualTest({ ...coupling, found })?.worst).toBeUndefined()
    const off = [
      { ...first, used: false } as ReadingSet,
      ...read([given(0, 0), given(0, 0), given(0, 60)]).found,
    ]
    expect(residualTest({ ...coupling, found: off })?.worst).toMatchObject({ set: 3, index: 1 })
  })
})

it('of two values that are not as sure, each is tested by its own part of what is left over', () => {
  const coupling = read([given(0, 0), given(0, 100)])
  const [one, other] = [at(coupling.found, 0), at(coupling.found, 1)]
  const test = residualTest({ ...coupling, found: [one, { ...other, u: 20 }] })
  // weights 4 to 1: the mean is 20; left over -20 and 80, 0.2 and 0.8 of it free: 2 / root 0.2 and 4 / root 0.8
  const told = [...(test?.worst ? [test.worst] : []), ...(test?.alike ?? [])]
  const sorted = told.toSorted((a, b) => a.set - b.set)
  expect(sorted.map(({ set, index, redundancy, w }) => [set, index, redundancy, w])).toEqual([
    [0, 1, close(0.2, 9), close(-2 / Math.sqrt(0.2), 9)],
    [1, 1, close(0.8, 9), close(4 / Math.sqrt(0.8), 9)],
  ])
})

it('a turn of four hours leaves a quarter free at each, whatever another turn has', () => {
  const turn = (hours: readonly number[], by: number) =>
    hours.map((hour) => [hour, hour === 6 ? by : 0])
  const eight = [12, 1.5, 3, 4.5, 6, 7.5, 9, 10.5]
  const test = residualTest(
    read([
      { kind: 'rim', rides: 'left', at: 0, sag: 0, readings: turn(eight, 0) },
      { kind: 'rim', rides: 'right', at: 200, sag: 0, readings: turn([12, 3, 6, 9], 80) },
    ]),
  )
  expect(test?.worst).toMatchObject({ set: 1, redundancy: close(0.25, 9) })
  expect(Math.abs(test?.worst?.w ?? 0)).toBeCloseTo(4, 9)
})

it('nothing is left over of a line that was measured once', () => {
  expect(residualTest(read([given(5, 60)]))).toBeUndefined()
})
