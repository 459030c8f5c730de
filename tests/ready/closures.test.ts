import { describe, expect, it } from 'vitest'
import { asFound } from '../../src/mechanics/readings/asFound'
import { closureChecks, sweepsWithoutClosure } from '../../src/engine/plan/closures'
import { closureItem } from '../../src/engine/plan/closureWords'
import { at, pair, planOf, trainOf, type Json } from '../engine/pair'

/** Rims of both shafts at x = 0 and 200, the second one off by `off` in closure. */
const rims = (off: number, second: Json = {}): Json[] => [
  {
    kind: 'rim',
    rides: 'right',
    at: 0,
    sag: 0,
    readings: [
      [12, 0],
      [3, 0],
      [6, 0],
      [9, 0],
    ],
  },
  {
    kind: 'rim',
    rides: 'right',
    at: 200,
    sag: 0,
    readings: [
      [12, 0],
      [3, 0],
      [6, off],
      [9, 0],
    ],
    ...second,
  },
]

const checked = (found: Json[]) => {
  const train = trainOf(
    pair({
      found,
      left: {
        feet: [
          { id: '1', x: -500 },
          { id: '2', x: -1500 },
        ],
      },
    }),
  )
  const coupling = at(train.couplings, 0)
  const checks = closureChecks(train, coupling)
  return {
    train,
    coupling,
    checks,
    item: closureItem(train, coupling, checks, sweepsWithoutClosure(coupling)),
  }
}

describe('closures', () => {
  it('are within one mil, and past it beyond', () => {
    expect(checked(rims(25.4)).checks.map(({ within }) => within)).toEqual([true, true])
    expect(checked(rims(-25.5)).checks.map(({ within }) => within)).toEqual([true, false])
    expect(checked(rims(20)).item).toMatchObject({ state: 'in' })
    expect(checked(rims(-60)).item).toMatchObject({ state: 'bad' })
  })

  it('that agree to less than people read are never said to agree within nothing', () => {
    const words = (off: number, fine: string) => {
      const train = trainOf({ ...pair({ found: rims(off) }), units: { length: 'mm', fine } })
      const coupling = at(train.couplings, 0)
      return closureItem(train, coupling, closureChecks(train, coupling), [])?.words
    }
    expect(words(0, 'mm')).toContain('2 full turns agree to under 0.01 mm')
    expect(words(0, 'mil')).toContain('agree to under 0.1 mil')
    expect(words(20, 'um')).toContain('agree within 20 µm')
  })

  it('that are off say what half of them does at the far feet of both machines', () => {
    const { train, checks } = checked(rims(60))
    const [motor, pump] = at(checks, 1).doubt
    // 30 in one reading is 15 of offset at x = 200: nothing at 0, 0.075 mrad; a foot at 2000 rises 150,
    // and one at -1500 moves 112.5 the other way
    expect(pump).toMatchObject({ machine: 1, x: 2000 })
    expect(pump?.rise).toBeCloseTo(150, 9)
    expect(pump?.side).toBeCloseTo(150, 9)
    expect(motor).toMatchObject({ machine: 0, x: -1500 })
    expect(motor?.rise).toBeCloseTo(112.5, 9)
    // the same by reducing readings that are really wrong by 30
    const wrong = (by: number) => asFound(at(trainOf(pair({ found: rims(by) })).couplings, 0)).line
    const arm = 2000 - 100
    const foot = ({ z, sz }: { z: number; sz: number }) => z + sz * arm
    expect(Math.abs(foot(wrong(90)) - foot(wrong(60)))).toBeCloseTo(pump?.rise ?? NaN, 9)
    expect(planOf(pair({ found: rims(60) })).findings.map(({ what }) => what)).toEqual([
      expect.stringContaining(
        "half of it, 30 µm, in one reading would put the far feet of the pump (x 2000 mm) 150 µm up or down, or 150 µm toward 3 o'clock or toward 9 o'clock",
      ),
    ])
    expect(train.couplings).toHaveLength(1)
  })

  it('that cannot be known are missing; sets that are not used and lines have none', () => {
    const without = {
      readings: [
        [12, 0],
        [3, 0],
        [6, 0],
      ],
    }
    expect(checked(rims(0, without)).item).toMatchObject({ state: 'missing' })
    const line = { kind: 'line', at: 100, offset: { y: 0, z: 0 }, slope: { y: 0, z: 0 } }
    expect(checked([line]).item).toBeUndefined()
    expect(
      checked([line, ...rims(300).map((set) => ({ ...set, use: false }))]).item,
    ).toBeUndefined()
  })
})
