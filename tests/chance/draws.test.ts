import { describe, expect, it } from 'vitest'
import { chanceOf } from '../../src/engine/chance/interval'
import { chanceText, likeChance } from '../../src/language/chanceText'
import { fillNormals, xoshiro } from '../../src/mechanics/uncertainty/normals'

const drawn = (count: number, seed: number, name: string, block = 0): Float64Array => {
  const out = new Float64Array(count)
  fillNormals(out, seed, name, block)
  return out
}
const mean = (values: Float64Array) => values.reduce((a, b) => a + b, 0) / values.length

describe('draws', () => {
  it('come from the published generator', () => {
    // the reference implementation of xoshiro128** from the state 0, 1, 2, 3, as other libraries test it
    const next = xoshiro([0, 1, 2, 3])
    expect([next(), next(), next(), next(), next()]).toEqual([
      5760, 17280, 2966400, 32451840, 2604340873,
    ])
  })

  it('are standard normal: mean, variance, tails', () => {
    const n = 200_000
    const values = drawn(n, 1, 'a reading')
    const within = (limit: number) => values.filter((v) => Math.abs(v) < limit).length / n
    // four standard errors of each
    expect(Math.abs(mean(values))).toBeLessThan(4 / Math.sqrt(n))
    expect(Math.abs(mean(values.map((v) => v * v)) - 1)).toBeLessThan(4 * Math.sqrt(2 / n))
    // table of the normal distribution
    expect(within(1)).toBeCloseTo(0.6827, 2)
    expect(within(1.96)).toBeCloseTo(0.95, 2)
    expect(within(3)).toBeCloseTo(0.9973, 3)
  })

  it('depend on seed, name and block, each, and on nothing else', () => {
    const n = 20_000
    const one = drawn(n, 1, 'sag at C1, set 0')
    expect(drawn(n, 1, 'sag at C1, set 0')).toEqual(one)
    for (const other of [
      drawn(n, 2, 'sag at C1, set 0'),
      drawn(n, 1, 'sag at C1, set 1'),
      drawn(n, 1, 'sag at C1, set 0', 1),
    ]) {
      const together = mean(one.map((v, i) => v * (other[i] ?? 0)))
      expect(Math.abs(together)).toBeLessThan(4 / Math.sqrt(n))
    }
  })
})

describe('a chance that is told', () => {
  it("has Wilson's interval", () => {
    // none good of ten: up to z^2 / (n + z^2) = 3.8415 / 13.8415
    expect(chanceOf(0, 10)).toEqual({
      chance: 0,
      low: 0,
      high: expect.closeTo(0.27753, 4) as number,
    })
    // 81 of 263, the worked example of Newcombe (1998), method 3: 0.2553 to 0.3662
    // an end that is the chance itself is it to the last digit
    expect(chanceOf(0, 1000).low).toBe(0)
    expect(chanceOf(1000, 1000).high).toBe(1)
    const { low, high } = chanceOf(81, 263)
    expect([low, high]).toEqual([expect.closeTo(0.2553, 4), expect.closeTo(0.3662, 4)])
  })

  it('is a whole percent where the draws allow it, never 0 and never 100', () => {
    const told = (good: number, draws: number) => chanceText(chanceOf(good, draws))
    expect(told(5977, 10_000)).toBe('60 %')
    expect(told(10_000, 10_000)).toBe('over 99 %')
    expect(told(0, 10_000)).toBe('under 1 %')
    expect(told(9960, 10_000)).toBe('over 99 %')
    expect(told(597, 1000)).toBe('60 %')
    expect(told(617, 1000)).toBe('60 %')
    expect(told(64, 100)).toBe('60 %')
    expect(told(100, 100)).toBe('over 95 %')
    expect(likeChance(0.617, chanceOf(597, 1000))).toBe('60 %')
  })
})
