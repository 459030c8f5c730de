import { describe, expect, test } from 'vitest'
import { twoMachines } from '../second/pairs'
import type { Coupling } from '../second/train'
import { exact, run, sameSpread, spread, wide } from './handWorked'
import { isWhole } from '../counts'

/** Rims on both shafts, 200 mm apart, read to so much at four hours. */
function rims(u: number, left: object, right: object, at: [number, number] = [0, 200]) {
  const readings: [number, number][] = [12, 3, 6, 9].map((hour) => [hour, 0])
  return [
    { kind: 'rim', rides: 'left', at: at[0], readings, u, uAt: 0, uSag: 0, ...left },
    { kind: 'rim', rides: 'right', at: at[1], readings, u, uAt: 0, uSag: 0, ...right },
  ] as Coupling['found']
}

describe.runIf(isWhole)('readings', () => {
  test('of reverse dials spread as published: u(x) = u_h sqrt((1 - x/D)^2 + (x/D)^2)', () => {
    // a total reading of +-1 mil, rectangular (JCGM 100, 4.3.7), of which half counts, 14 in apart;
    // a reading is a quarter turn of its own here, so that half the difference of two has u_h
    const half = 1 / Math.sqrt(3) / 2
    const found = rims(half * Math.SQRT2, {}, {}, [0, 14])
    for (const [x, published] of [
      [26, 0.59],
      [52, 1.328],
    ] as const) {
      const planes = { left: { machine: 'A', plane: x }, right: { machine: 'B', plane: x } }
      const train = twoMachines({ offset: wide }, found, {}, {}, planes)
      train.units = { length: 'in', fine: 'mil' }
      const { y, z } = spread(run(train), 'offset')
      for (const one of [y, z]) {
        sameSpread(one, half * Math.hypot(1 - x / 14, x / 14))
        expect(Math.abs(one / published - 1)).toBeLessThan(0.01)
      }
    }
  })

  test('on one bracket share its sag, each by its own u', () => {
    const tolerance = { offset: wide, angle: wide }
    // the left rim reads d(0) turned over: sag of both cancels at mid-span and adds up in the slope
    const shared = run(
      twoMachines(tolerance, rims(exact, { uSag: 30, bracket: 'a' }, { uSag: 10, bracket: 'a' })),
    )
    sameSpread(spread(shared, 'offset').z, (30 - 10) / 2)
    sameSpread(spread(shared, 'angle').z, (30 + 10) / 200)
    const apart = run(
      twoMachines(tolerance, rims(exact, { uSag: 30, bracket: 'a' }, { uSag: 10, bracket: 'b' })),
    )
    sameSpread(spread(apart, 'offset').z, Math.hypot(30, 10) / 2)
    sameSpread(spread(apart, 'angle').z, Math.hypot(30, 10) / 200)
    expect(spread(apart, 'angle').y).toBeLessThan(1e-6)
  })

  test('hang on a bracket that is known better where its sag was entered', () => {
    const unknown = { uSag: undefined }
    const entered = { uSag: undefined, sag: 0 }
    const { z } = spread(
      run(twoMachines({ offset: wide }, rims(exact, unknown, entered))),
      'offset',
    )
    sameSpread(z, Math.hypot(25, 10) / 2)
  })

  test('of a dial that stands elsewhere err by the slope', () => {
    const slope = 2 // mrad, y alone
    const sets = rims(exact, { uAt: 3 }, { uAt: undefined })
    sets.forEach((set) => {
      if (set.kind !== 'rim') return
      const d = slope * (set.at - 100) * (set.rides === 'left' ? -1 : 1)
      set.readings = set.readings.map(([hour]) => [hour, d * Math.sin((hour * Math.PI) / 6)])
    })
    const answer = run(twoMachines({ offset: wide, angle: wide }, sets))
    sameSpread(spread(answer, 'offset').y, (slope * Math.hypot(3, 1)) / 2)
    sameSpread(spread(answer, 'angle').y, (slope * Math.hypot(3, 1)) / 200)
    expect(spread(answer, 'offset').z).toBeLessThan(1e-5)
  })

  test('of a face err by what its diameter does, and those that do not count by nothing', () => {
    const of = { diameter: 300, uDiameter: 6, u: exact }
    const readings: [number, number][] = [12, 3, 6, 9].map((h) => [
      h,
      h === 12 ? 0 : h === 6 ? 300 : 150,
    ])
    // the slope: -300 um over 300 mm
    const face = { kind: 'face', rides: 'right', ...of, uSag: 0, readings } as const
    const off = { ...face, u: 1e-9, use: false, readings: [[12, 5]] as [number, number][] }
    // rims that weigh next to nothing hold the offset
    const answer = run(twoMachines({ angle: wide }, [face, off, ...rims(1000, {}, {})]))
    sameSpread(spread(answer, 'angle').z, (1 * 6) / 300)
    expect(spread(answer, 'angle').y).toBeLessThan(1e-4)
  })
})
