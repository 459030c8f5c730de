import { describe, expect, test } from 'vitest'
import { twoMachines } from '../second/pairs'
import type { GrowthPoint, Train } from '../second/train'
import { exact, known, run, sameChance, sameSpread, spread, wide } from './handWorked'
import { isWhole } from '../counts'

/** Growth of the right machine in the state "hot", its points at the rows of feet. */
function growing(points: GrowthPoint[], left: GrowthPoint[]): Train {
  const states = [{ id: 'hot', name: 'Hot' }]
  const tolerance = { offset: wide, angle: wide }
  const train = twoMachines(
    tolerance,
    [known(0, 0, exact)],
    { growth: { hot: points } },
    { states },
  )
  const [first, ...others] = train.machines
  if (!first) throw new Error('no machine')
  return { ...train, machines: [{ ...first, growth: { hot: left } }, ...others] }
}
const nothing: GrowthPoint[] = [{ at: 0, rise: 0, side: 0, u: 0 }]

describe.runIf(isWhole)('growth', () => {
  test('is wrong to four fifths alike at all points of a machine, with the sign of the value', () => {
    const points = (rise: number) => [
      { at: 1000, rise: 100, u: 10, side: 0 },
      { at: 2000, rise, u: 10, side: 0 },
    ]
    for (const [rise, sign] of [
      [200, 1],
      [-200, -1],
    ] as const) {
      const answer = run(growing(points(rise), nothing))
      const between = (a: number, b: number) =>
        Math.sqrt(a * a + b * b + 2 * a * b * 0.8 * sign) * 10
      // what grows at 1000 counts 1.9 times at mid-span, at 2000 it counts -0.9 times
      sameSpread(spread(answer, 'offset').z, between(1.9, -0.9))
      sameSpread(spread(answer, 'angle').z, between(1, -1) / 1000)
      sameSpread(
        spread(answer, 'offset').y,
        Math.sqrt(1.9 ** 2 + 0.9 ** 2 - 2 * 1.9 * 0.9 * 0.8) * 10,
      )
    }
  })

  test('is wrong to four fifths alike in all states of a machine', () => {
    // both gaps stand at their limit: each is good in half of the draws, and both by the orthant of
    // two normals that go together by 0.8, 1/4 + asin(0.8) / 2 pi (Sheppard 1899, from memory)
    const axial = { found: 5, want: 4, tolerance: 1, u: 0 }
    const point = (value: number): GrowthPoint[] => [{ at: 0, axial: value, u: 10 }]
    const states = ['hot', 'warm'].map((id) => ({ id, name: id }))
    const growth = { hot: [{ at: 0, axial: 0, u: 10 }], warm: point(0) }
    const train = twoMachines(
      { offset: wide },
      [known(0, 0, exact)],
      { growth },
      { states },
      { axial },
    )
    const answer = run(train)
    sameChance(answer.asFound, 0.25 + Math.asin(0.8) / (2 * Math.PI))
    for (const { chance } of answer.couplings) sameChance(chance, 0.5)
  })

  test('takes the usual uncertainties of a value, of heat and of an interval', () => {
    const level = (point: Partial<GrowthPoint>) =>
      spread(run(growing([{ at: 0, side: 0, ...point }], nothing)), 'offset').z
    sameSpread(level({ rise: -400 }), Math.hypot(50, 10))
    const heat = { height: 500, expansion: 12, from: 20, to: 60 } // 240 um
    sameSpread(level({ rise: 60, heat }), Math.hypot(0.2 * 300, 10))
    sameSpread(level({ rise: 60, heat, u: 25 }), 25)
    sameSpread(level({ range: { rise: [-30, 90] } }), 60 / Math.sqrt(3))
  })

  test.runIf(isWhole)(
    'that nobody gives is doubted at the outer rows of feet, or at the flex planes',
    () => {
      const train = growing([{ at: 0, axial: 5 }], [{ at: 0, rise: 0 }])
      const answer = run(train)
      const rows = 20 * Math.sqrt(1.9 ** 2 + 0.9 ** 2 - 2 * 1.9 * 0.9 * 0.8)
      // the left machine has no feet and one flex plane; its rise of 0 is known to 10
      sameSpread(spread(answer, 'offset').y, Math.hypot(rows, 20))
      sameSpread(spread(answer, 'offset').z, Math.hypot(rows, 10))
    },
  )

  test('of a state that says nothing is taken as shut down', () => {
    const silent = run(growing([{ at: 0, rise: 0, side: 0 }], [{ at: 0, axial: 0 }]))
    expect(spread(silent, 'offset').z).toBeLessThan(1e-5)
    const doubted = run(growing([{ at: 0, rise: 0, side: 0, u: 0 }], [{ at: 0, axial: 0 }]))
    sameSpread(spread(doubted, 'offset').z, 20)
  })

  test('between two states errs as both do, and shares what they share', () => {
    const state = (id: string, load: number) => ({ id, name: id, load })
    const part = {
      ...state('part', 40),
      between: { from: 'idle', to: 'full', by: 'load' as const },
    }
    const train = twoMachines(
      { offset: wide, angle: wide },
      [known(0, 0, exact)],
      {
        growth: {
          idle: [{ at: 0, rise: 40, side: 0, u: 5 }],
          full: [
            { at: 0, rise: 100, side: 0, u: 10 },
            { at: 0, rise: 900, use: false },
          ],
        },
      },
      { states: [state('idle', 20), part, state('full', 100)] },
    )
    for (const machine of train.machines) machine.growth ??= { idle: nothing, full: nothing }
    const spreads = run(train).couplings.map(({ u }) => u.find(({ what }) => what === 'offset')?.z)
    // a quarter of the way: 0.75 * 5 and 0.25 * 10, four fifths of the variance alike
    const between = Math.sqrt(0.8 * 6.25 ** 2 + 0.2 * (3.75 ** 2 + 2.5 ** 2))
    ;[5, between, 10].forEach((u, i) => {
      sameSpread(spreads[i] ?? NaN, u)
    })
  })

  test('is left out across the train where a coupling is judged by its cold setting', () => {
    const train = growing([{ at: 0, rise: 100, side: 50, axial: 40 }], nothing)
    const [c] = train.couplings
    if (!c) throw new Error('no coupling')
    c.axial = { found: 5, want: 5, tolerance: 1, u: 0 }
    c.setting = { use: true, why: 'measured', offset: { z: 3 } }
    const answer = run(train)
    expect(spread(answer, 'offset').z).toBeLessThan(1e-5)
    expect(spread(answer, 'angle').y).toBeLessThan(1e-5)
    sameSpread(spread(answer, 'gap').x, Math.hypot(5, 10) / 1000)
  })
})
