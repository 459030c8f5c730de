import { describe, expect, it } from 'vitest'
import { coolingOf, lineAfter, type KnownTime } from '../../src/mechanics/hotCheck/cooling'
import type { TimedLine } from '../../src/mechanics/hotCheck/coolingFit'
import { Normals } from '../second/sure/normals'

/** The law itself: Newton's law of cooling, a(t) = cold + (hot - cold) e^(-t/T). */
const cooled = (hot: number, cold: number, time: number, after: number) =>
  cold + (hot - cold) * Math.exp(-after / time)

const four = [0, 1, 2, 3] as const
const apart = (u: readonly number[]) =>
  four.map((i) => four.map((j) => (i === j ? (u[i] ?? 0) ** 2 : 0)))
const u = [6, 0.05, 5, 0.04]

/** Lines at times, of four numbers each with a hot and a cold value. */
const lines = (
  times: readonly number[],
  value: (i: number, after: number) => number,
): TimedLine[] =>
  times.map((after) => ({
    after,
    numbers: four.map((i) => value(i, after)),
    covariance: apart(u),
  }))

const halves = (...n: number[]) => n.map((times) => times * 60 * Math.LN2)
const exactly = (time: number): KnownTime => ({ time, u: 0 })

describe('by hand', () => {
  // T = 60 min; at the times at which a half and a quarter are left: 100, hot, to 20, cold, is 60 and 40.
  // hot - cold = 4 (60 - 40), cold = 2*40 - 60, so hot = 3*60 - 2*40 = 100, u = sqrt(9 + 4) of that of a reading
  const two = lines(halves(1, 2), (i, t) => cooled(100 * (i + 1), 20, 60, t))
  it('two times and a time constant', () => {
    const fit = coolingOf(two, exactly(60))
    four.forEach((i) => {
      expect(fit?.hot[i]).toBeCloseTo(100 * (i + 1), 8)
      expect(fit?.cold?.[i]).toBeCloseTo(20, 8)
      const rows = fit?.covariance ?? []
      const variance = rows[i]?.[i]
      expect(Math.sqrt(variance ?? 0)).toBeCloseTo(Math.sqrt(13) * (u[i] ?? 0), 8)
    })
    ;[0, 0, 3, 0, 0, 0, -2, 0].forEach((gain, k) => {
      expect(fit?.gains[2]?.[k]).toBeCloseTo(gain, 8)
    })
    expect(fit?.test).toBeUndefined()
    // an eighth is left after three halvings
    const [eighth = 0] = halves(3)
    four.forEach((i) => {
      expect(fit && lineAfter(fit, eighth)[i]).toBeCloseTo(20 + (100 * (i + 1) - 20) / 8, 8)
    })
  })

  it('the same with a time constant that is unsure: its own part is added', () => {
    // hot = (a1 x2 - a2 x1)/(x2 - x1) + (a1 - a2)/(x1 - x2) with x = e^(-kt): by its difference quotient in T
    const hotBy = (T: number) => {
      const [x1 = 0, x2 = 0] = halves(1, 2).map((t) => Math.exp(-t / T))
      const [a1, a2] = [60, 40]
      const range = (a1 - a2) / (x1 - x2)
      return a1 - range * x1 + range
    }
    const byTime = (hotBy(60.01) - hotBy(59.99)) / 0.02
    const fit = coolingOf(two, { time: 60, u: 3 })
    expect(fit?.hot[0]).toBeCloseTo(100, 6)
    const sum = Math.hypot(Math.sqrt(13) * 6, 3 * byTime)
    // four numbers with one T tell something of it too, so that no more than this is left
    expect(Math.sqrt(fit?.covariance[0]?.[0] ?? 0)).toBeCloseTo(sum, 3)
  })

  it('three times give the time constant', () => {
    const fit = coolingOf(lines(halves(1, 2, 3), (i, t) => cooled(1e4 * (i + 1), 2e3, 60, t)))
    expect(fit?.time).toBeCloseTo(60, 5)
    four.forEach((i) => {
      expect(fit?.hot[i]).toBeCloseTo(1e4 * (i + 1), 3)
    })
    expect(fit?.test?.freedom).toBe(3)
    expect(fit?.test?.squares).toBeLessThan(1e-6)
  })

  it('a straight line has no time constant, and goes back to the stop straight', () => {
    const fit = coolingOf(lines([10, 20, 30, 40], (_, t) => 5000 - 20 * t))
    expect(fit?.hot[0]).toBeCloseTo(5000, 3)
    expect(fit?.time).toBeUndefined()
    expect(fit?.between.high).toBeUndefined()
    expect(fit && lineAfter(fit, 100)[0]).toBeCloseTo(3000, 3)
  })

  it('what does not cool by one law is told: four times, the last two at odds', () => {
    const far = 200
    const fit = coolingOf(
      lines([10, 40, 80, 140], (_, t) => cooled(600, 100, 60, t) + (t === 80 ? far : 0)),
    )
    expect(fit?.test?.squares ?? 0).toBeGreaterThan(fit?.test?.limit ?? Infinity)
  })
})

describe('what cannot be told', () => {
  it('two times without a time constant', () => {
    expect(coolingOf(lines([10, 30], (_, t) => cooled(100, 0, 60, t)))).toBeUndefined()
  })
  it('three times of a train that does not move: any time constant fits', () => {
    expect(coolingOf(lines([10, 30, 60], () => 50))).toBeUndefined()
    expect(
      coolingOf(
        lines([10, 30, 60], () => 50),
        exactly(60),
      )?.hot[0],
    ).toBeCloseTo(50, 8)
  })
  it('readings so late that it was cold before', () => {
    expect(
      coolingOf(
        lines([310, 400], () => 50),
        { time: 60, u: 15 },
      ),
    ).toBeUndefined()
  })
})

describe('of readings with errors that other code draws', () => {
  const runs = process.env.HOLDFAST_LONG === '1' ? 2000 : 80
  /** Part of the statements "within 1.96 u" that are true, of every number of the line at the stop. */
  function covered(times: readonly number[], known?: KnownTime, seed = 1): number[] {
    const normals = new Normals(seed)
    const hot = [-180, 0.5, 260, -0.8]
    const cold = [40, 0.1, -30, 0.2]
    let told = 0
    const good = [0, 0, 0, 0]
    for (let run = 0; run < runs; run++) {
      // where T is said with an uncertainty, the true one is as far off as that
      const time = 90 + (known?.u ?? 0) * normals.next()
      const fit = coolingOf(
        lines(
          times,
          (i, t) => cooled(hot[i] ?? 0, cold[i] ?? 0, time, t) + (u[i] ?? 0) * normals.next(),
        ),
        known,
      )
      if (!fit) continue
      told++
      four.forEach((i) => {
        const off = Math.abs((fit.hot[i] ?? 0) - (hot[i] ?? 0))
        if (off <= 1.96 * Math.sqrt(fit.covariance[i]?.[i] ?? 0)) good[i] = (good[i] ?? 0) + 1
      })
    }
    expect(told).toBeGreaterThan(0.99 * runs)
    return good.map((count) => count / told)
  }
  // three standard deviations of so many draws to either side of 95 %
  const slack = runs === 2000 ? 0.015 : 3 * Math.sqrt((0.95 * 0.05) / runs)
  it.each([
    ['five times', [8, 25, 50, 90, 150], undefined],
    ['four times within the first hour and a half', [10, 30, 60, 95], undefined],
    ['two times, T known', [12, 45], { time: 90, u: 0 }],
    ['two times, T known to a tenth', [12, 45], { time: 90, u: 9 }],
    ['four times, T known to a quarter', [12, 30, 45, 70], { time: 90, u: 22.5 }],
  ] as const)('%s: 95 of 100 statements are true', (_, times, known) => {
    const parts = covered(times, known)
    for (const part of parts) {
      expect(part).toBeGreaterThan(0.95 - slack)
      expect(part).toBeLessThan(0.95 + slack)
    }
  })
})
