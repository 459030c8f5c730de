import { describe, expect, it, test } from 'vitest'
import {
  growthOf,
  growthPointsIn,
  lineThrough,
  lineValueAt,
  weighted,
} from '../../src/mechanics/growth'
import { close, at, given, pair, planOf, trainOf, type Json } from './pair'

const states = [{ id: 'hot', name: 'Hot' }]

/** Rise, side and axial (um) of an axis of the right machine at x, grown by these points. */
function grown(points: readonly Json[], axis: 'left' | 'right', x: number, units?: Json) {
  const train = trainOf(
    pair({ right: { growth: { hot: points } }, rest: { states, ...(units && { units }) } }),
  )
  const { rise, side, axial } = growthOf(at(train.machines, 1), 'hot', axis)
  return [rise, side, axial].map((line) => lineValueAt(line, x))
}
const near = (...values: number[]) => values.map((v) => close(v, 9))

describe('growth of an axis', () => {
  it('is constant from one point', () => {
    const points = [{ at: 1000, rise: 120, side: -30, axial: 200 }]
    expect(grown(points, 'left', 1000)).toEqual(near(120, -30, 200))
    expect(grown(points, 'right', -5000)).toEqual(near(120, -30, 200))
  })

  it('is the line through two points, carried on beyond them', () => {
    // rise 100 at 1000, 300 at 2000: 0.2 um a mm
    const points = [
      { at: 1000, rise: 100, side: 10 },
      { at: 2000, rise: 300, side: -10 },
    ]
    expect(grown(points, 'left', 1500)).toEqual(near(200, 0, 0))
    expect(grown(points, 'left', 0)).toEqual(near(-100, 30, 0))
    expect(grown(points, 'left', 2500)).toEqual(near(400, -20, 0))
  })

  it('is a least-squares line through three', () => {
    // 0, 30, 30 at 0, 1000, 2000: mean 20 at 1000; slope (1000 * 20 + 1000 * 10) / 2e6 = 0.015
    const points = [0, 1000, 2000].map((x, i) => ({ at: x, rise: [0, 30, 30][i] }))
    expect(grown(points, 'left', 1000)).toEqual(near(20, 0, 0))
    expect(grown(points, 'left', 0)).toEqual(near(5, 0, 0))
    expect(grown(points, 'left', 2000)).toEqual(near(35, 0, 0))
  })

  it('is the mean of points at one x', () => {
    const points = [
      { at: 1200, rise: 100 },
      { at: 1200, rise: 160 },
    ]
    expect(grown(points, 'left', 9000)).toEqual(near(130, 0, 0))
  })

  it('takes from each point only what it gives', () => {
    // rise: 100 and 200 over 1000 mm; side: one point, a constant; axial: two points
    const points = [
      { at: 1000, rise: 100, axial: 10 },
      { at: 2000, rise: 200, side: 40 },
      { at: 3000, axial: 50 },
    ]
    expect(grown(points, 'left', 3000)).toEqual(near(300, 40, 50))
    expect(grown(points, 'left', 0)).toEqual(near(0, 40, -10))
  })

  it('may differ between the two axes of a machine', () => {
    const points = [
      { at: 1000, axis: 'left', rise: 100 },
      { at: 1000, axis: 'right', rise: 400 },
      { at: 2000, rise: 300 },
    ]
    // left: 100 at 1000, 300 at 2000; right: 400 at 1000, 300 at 2000
    expect(grown(points, 'left', 1500)).toEqual(near(200, 0, 0))
    expect(grown(points, 'left', 0)).toEqual(near(-100, 0, 0))
    expect(grown(points, 'right', 0)).toEqual(near(500, 0, 0))
  })

  it('comes of heat: 500 mm of 12e-6 per degree over 40 degrees are 240 um', () => {
    const heat = { height: 500, expansion: 12, from: 20, to: 60 }
    expect(grown([{ at: 1000, heat }], 'left', 0)).toEqual(near(240, 0, 0))
    expect(grown([{ at: 1000, rise: 60, heat }], 'left', 0)).toEqual(near(300, 0, 0))
    const cooled = { ...heat, from: 60, to: 20 }
    expect(grown([{ at: 1000, heat: cooled }], 'left', 0)).toEqual(near(-240, 0, 0))
  })

  it('comes of heat in Fahrenheit and inches: 20 in of 6.5e-6 over 100 degrees are 13 mil', () => {
    const heat = { height: 20, expansion: 6.5, from: 70, to: 170, material: 'cast iron' }
    const units = { length: 'in', fine: 'mil', temperature: 'F' }
    expect(grown([{ at: 40, heat }], 'left', 0, units)).toEqual(near(13 * 25.4, 0, 0))
  })

  it('is nothing in a state that gives none, and the answer says so', () => {
    const document = pair({
      right: { growth: { hot: [{ at: 1000, rise: 50 }] } },
      rest: { states: [...states, { id: 'idle', name: 'Idle' }] },
    })
    const answer = planOf(document)
    // A does not grow hot, nothing grows idle
    expect(answer.notEntered).toContainEqual({
      where: 'machines[0].growth.hot',
      what: 'growth of Motor in "Hot"',
      instead: 'taken as none',
    })
    expect(answer.notEntered).toContainEqual({
      where: 'machines[0].growth.idle',
      what: 'growth of every machine in "Idle"',
      instead: 'taken as none: judged as the train stands shut down',
    })
    expect(at(answer.asFound, 0).share).toEqual({ hot: 0.5, idle: 0 })
  })
})

describe('growth at a coupling', () => {
  it('is the right machine’s left axis against the left machine’s right axis, at mid-span', () => {
    const document = pair({
      left: {
        axis: { left: { z: 400 }, right: { y: 200, z: 350 } },
        growth: {
          hot: [
            { at: -1000, axis: 'left', rise: 999 },
            { at: -1000, axis: 'right', rise: 20, side: 5 },
            { at: 0, axis: 'right', rise: 40, side: 5 },
          ],
        },
      },
      right: {
        growth: {
          hot: [
            { at: 100, rise: 90, side: -10 },
            { at: 1100, rise: 110, side: 40 },
          ],
        },
      },
      found: [given(1, 2, 0.01, 0.02)],
      coupling: { tolerance: { offset: 100, angle: 1 } },
      rest: { states },
    })
    // at x = 100: left 40 + 0.02 * 100 = 42 and 5, slopes 0.02 and 0; right 90 and -10, slopes 0.02
    // and 0.05: d = (1 - 10 - 5, 2 + 90 - 42), slopes (0.01 + 0.05 - 0, 0.02 + 0.02 - 0.02)
    const { checks } = at(planOf(document).couplings, 0)
    expect(checks).toEqual([
      {
        what: 'offset',
        y: close(-14, 9),
        z: close(50, 9),
        limit: 100,
        share: close(0.5, 9),
      },
      {
        what: 'angle',
        y: close(0.06, 9),
        z: close(0.02, 9),
        limit: 1,
        share: close(0.06, 9),
      },
    ])
  })
})

describe('lines added up', () => {
  // 10 um at 100 mm and 0.1 mrad; 40 um at 300 mm and -0.2 mrad, which is 80 um at 100 mm
  const [one, other] = [
    { x: 100, value: 10, slope: 0.1 },
    { x: 300, value: 40, slope: -0.2 },
  ]

  it.each([
    // 1 * 10 + 2 * 80; 0.1 - 2 * 0.2
    [1, 2, { x: 100, value: 170, slope: -0.3 }],
    // 0.25 * 10 + 0.75 * 80; 0.25 * 0.1 - 0.75 * 0.2
    [0.25, 0.75, { x: 100, value: 62.5, slope: -0.125 }],
  ])('%s of the first and %s of the second', (a, b, sum) => {
    const { x, value, slope } = weighted([
      { line: one, weight: a },
      { line: other, weight: b },
    ])
    expect([x, value, slope]).toEqual(near(sum.x, sum.value, sum.slope))
  })

  it('half of one line alone is half as high and half as steep', () => {
    const { x, value, slope } = weighted([{ line: one, weight: 0.5 }])
    expect([x, value, slope]).toEqual(near(100, 5, 0.05))
  })

  it('of none is a line of 0', () => {
    expect(weighted([])).toEqual({ x: 0, value: 0, slope: 0 })
  })
})

test('points no farther apart than places count as one give their mean, others a slope', () => {
  const through = (apart: number) =>
    lineThrough([
      { x: 0, value: 10 },
      { x: apart, value: 20 },
    ])
  expect(through(1e-6)).toEqual({ x: 5e-7, value: 15, slope: 0 })
  // 10 um over 2 nm
  expect(through(2e-6).slope).toEqual(close(5e6, 3))
})

test('a machine that nothing is said of in a state rests on no points there', () => {
  const train = trainOf(
    pair({ right: { growth: { hot: [{ at: 1000, rise: 120 }] } }, rest: { states } }),
  )
  expect(growthPointsIn(at(train.machines, 1), 'hot').map(({ at: x }) => x)).toEqual([1000])
  expect(growthPointsIn(at(train.machines, 0), 'hot')).toEqual([])
  expect(growthPointsIn(at(train.machines, 1), 'another')).toEqual([])
})
