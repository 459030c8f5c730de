import { describe, expect, it } from 'vitest'
import { findingsOf } from '../../src/engine/plan/findings'
import { asFound } from '../../src/mechanics/readings/asFound'
import { residualTest } from '../../src/mechanics/readings/residualTest'
import type { Coupling, Train } from '../../src/mechanics/train'
import { Random } from '../second/random'
import { anchoredPair, readPair } from './anchoredPair'
import { isWhole } from '../counts'

const u = 10
/** Sum of twelve uniform numbers less six: normal to three sigma and more, of variance 1. */
const normal = (draw: Random) =>
  Array.from({ length: 12 }, () => draw.between(0, 1)).reduce((a, b) => a + b) - 6

interface Planted {
  readonly set: number
  readonly index: number
}

/** A coupling read by two rims at these hours, with errors of one u each and one more of `by` at a random reading. */
function readings(
  draw: Random,
  hours: number,
  by: number,
): { train: Train; coupling: Coupling; planted: Planted } {
  const d = {
    y: draw.between(-200, 200),
    z: draw.between(-200, 200),
    sy: draw.between(-0.5, 0.5),
    sz: draw.between(-0.5, 0.5),
  }
  const planted = { set: Math.floor(draw.between(0, 2)), index: Math.floor(draw.between(0, hours)) }
  const sweep = (s: number, rides: 'left' | 'right', at: number) => ({
    kind: 'rim' as const,
    rides,
    at,
    sag: 0,
    u,
    readings: Array.from({ length: hours }, (_, i): [number, number] => {
      const hour = (12 * (i + 1)) / hours
      const angle = (hour * Math.PI) / 6
      const arm = at - 1000
      const toward = (d.y + d.sy * arm) * Math.sin(angle) + (d.z + d.sz * arm) * Math.cos(angle)
      const gross = planted.set === s && planted.index === i ? by : 0
      return [hour, (rides === 'right' ? 1 : -1) * toward + 300 + u * (normal(draw) + gross)]
    }),
  })
  const found = [sweep(0, 'left', 850), sweep(1, 'right', 1150)]
  const document = anchoredPair(
    { name: 'a to b', tolerance: { flex: 1 }, found },
    [900, 1100],
    1400,
  )
  return { ...readPair(document), planted }
}

const draws = 500

describe('normalized residuals (Baarda 1968)', () => {
  it(`find an error of 8 u in 95 % of ${draws} sets of five to eight hours, and name no wrong reading`, () => {
    const draw = new Random(11)
    let [found, named, wrong] = [0, 0, 0]
    for (let i = 0; i < draws; i++) {
      const { coupling, planted } = readings(draw, 5 + (i % 4), 8)
      const test = residualTest(coupling)
      if (!test?.worst) continue
      found++
      if (test.alike.length > 0) continue
      named++
      if (test.worst.set !== planted.set || test.worst.index !== planted.index) wrong++
    }
    expect(found / draws).toBeGreaterThanOrEqual(0.95)
    expect(named / draws).toBeGreaterThan(0.5)
    expect(wrong / draws).toBeLessThan(0.03)
  })

  it.runIf(isWhole)(
    'accuse sound readings no more often than they say: once in 20 couplings',
    () => {
      const draw = new Random(12)
      let accused = 0
      for (let i = 0; i < 1000; i++)
        if (residualTest(readings(draw, 4 + (i % 5), 0).coupling)?.worst) accused++
      expect(accused / 1000).toBeLessThan(0.065)
      expect(accused / 1000).toBeGreaterThan(0.02)
    },
  )

  it('never name a reading of a sweep of four hours, which is one test', () => {
    const draw = new Random(13)
    let found = 0
    for (let i = 0; i < 200; i++) {
      const { train, coupling, planted } = readings(draw, 4, 8)
      const test = residualTest(coupling)
      if (!test?.worst) continue
      found++
      expect(test.alike.length).toBeGreaterThanOrEqual(3)
      expect(
        [test.worst, ...test.alike].some(
          (one) => one.set === planted.set && one.index === planted.index,
        ),
      ).toBe(true)
      const told = findingsOf(train, [asFound(coupling)])
        .map(({ what }) => what)
        .join('; ')
      expect(told).not.toMatch(/the reading at/)
    }
    expect(found).toBeGreaterThan(180)
  })

  it('say nothing of readings that nothing is left over to test by', () => {
    const { coupling } = readings(new Random(14), 3, 8)
    expect(residualTest(coupling)).toBeUndefined()
  })

  it('tell the reading by its place and name, with the risk', () => {
    const draw = new Random(15)
    for (let i = 0; i < 50; i++) {
      const { train, coupling, planted } = readings(draw, 8, 20)
      const found = findingsOf(train, [asFound(coupling)]).find(({ what }) =>
        what.includes('does not fit'),
      )
      if (!found?.what.includes('the reading at')) continue
      expect(found.where).toBe(`couplings[0].found[${planted.set}].readings[${planted.index}]`)
      expect(found.what).toMatch(
        /^a to b: the reading at .* of set [12] does not fit the others, by [\d.]+ times what chance makes of it; read it again \(sound readings are accused so once in 20 couplings\)$/,
      )
      return
    }
    throw new Error('never named')
  })
})
