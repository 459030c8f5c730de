import { describe, expect, it } from 'vitest'
import {
  convexCurve,
  heightAt,
  lowerHull,
  type CurvePoint,
} from '../../src/engine/studies/tradeoff/convexCurve'
import { Random } from '../second/random'

interface Asked {
  readonly points: CurvePoint[]
  readonly questions: number
}

/** Finds a curve between two shares; `ask` gives height and slope. */
function find(
  ask: (share: number) => [cost: number, slope: number],
  from: number,
  to: number,
  bent: boolean,
): Asked {
  let questions = 0
  const at = (share: number): CurvePoint => {
    questions++
    const [cost, slope] = ask(share)
    return { share, cost, slope, bent }
  }
  const steps = convexCurve(at(from), at(to), at)
  for (;;) {
    const step = steps.next()
    if (!step.done) continue
    if (!step.value) throw new Error('no curve')
    return { points: step.value, questions }
  }
}

/** The largest of some falling lines and 0: convex, with a corner wherever two change places. */
const lines = (list: readonly (readonly [slope: number, zeroAt: number])[]) => {
  return (share: number): [number, number] => {
    let best: [number, number] = [0, 0]
    for (const [slope, zeroAt] of list) {
      const height = slope * (share - zeroAt)
      if (height > best[0]) best = [height, slope]
    }
    return best
  }
}

describe('a curve of straight pieces', () => {
  it('is found with its corners where they are', () => {
    // 10(1-s), 4(2-s), (4-s): they cross at 1/3 and 4/3, and end at 4
    const { points } = find(
      lines([
        [-10, 1],
        [-4, 2],
        [-1, 4],
      ]),
      0,
      5,
      false,
    )
    const corners = points.map(({ share }) => share)
    for (const corner of [1 / 3, 4 / 3, 4])
      expect(Math.min(...corners.map((at) => Math.abs(at - corner)))).toBeLessThan(1e-9)
  })

  it('is exact everywhere, with few questions, for random lines', () => {
    const random = new Random(8)
    for (let turn = 0; turn < 200; turn++) {
      const list = Array.from(
        { length: random.whole(1, 12) },
        () => [-random.scale(0.1, 100), random.between(0.5, 5)] as const,
      )
      const curve = lines(list)
      const { points, questions } = find(curve, 0.2, 5, false)
      for (let i = 0; i <= 100; i++) {
        const share = 0.2 + 0.048 * i
        const apart = Math.abs(heightAt(points, share) - curve(share)[0])
        expect(apart).toBeLessThan(1e-5 + 1e-6 * curve(0.2)[0])
      }
      expect(questions).toBeLessThanOrEqual(4 * list.length + 6)
    }
  })
})

describe('a bent curve', () => {
  it.each<[string, (share: number) => [number, number]]>([
    ['a parabola', (s) => [(5 - s) ** 2 * 40, -80 * (5 - s)]],
    ['a hyperbola', (s) => [100 / s - 20, -100 / s ** 2]],
    [
      'one that begins upright, as circles make it at the floor',
      (s) => [50 - 20 * Math.sqrt(s - 0.1 + 1e-9), -10 / Math.sqrt(s - 0.1 + 1e-9)],
    ],
  ])('%s is found within 1e-4 of its height', (_, curve) => {
    const { points, questions } = find(curve, 0.1, 5, true)
    const largest = curve(0.1)[0]
    for (let i = 0; i <= 1000; i++) {
      const share = 0.1 + 0.0049 * i
      const [height] = curve(share)
      const apart = Math.abs(heightAt(points, share) - height)
      expect(apart, `at ${share}`).toBeLessThanOrEqual(1e-4 * Math.max(height, largest / 100))
    }
    expect(questions).toBeLessThan(600)
  })
})

describe('the hull', () => {
  it('drops a corner that the last digits put above a chord, and no other', () => {
    const at = (share: number, cost: number): CurvePoint => ({ share, cost, slope: 0, bent: false })
    const points = [at(0, 10), at(1, 6), at(2, 4 + 1e-9), at(3, 2), at(4, 1), at(5, 1)]
    expect(lowerHull(points).map(({ share }) => share)).toEqual([0, 1, 3, 4, 5])
  })
})
