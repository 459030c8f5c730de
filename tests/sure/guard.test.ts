import { describe, expect, test } from 'vitest'
import { judge } from '../second/judge'
import { twoMachines } from '../second/pairs'
import { randomSureTrain } from '../second/randomSure'
import { solveSecond } from '../second/solve'
import { spreadIn, ofAnyPlan } from '../second/sure/covariance'
import { metric } from '../second/metric'
import type { Coupling, GrowthPoint, Plan, Train } from '../second/train'
import { exact, known } from './handWorked'

const found = { y: 0, z: -300 }
/** Shims and slides that err by nothing, and a share that leaves all of a tolerance. */
const sharp = { sure: { shim: 0, slide: 0 } }

/** One coupling that is 300 um low, its offset known to u; the right machine may do as it likes. */
const low = (plan: Plan, u = 10, tolerance: Coupling['tolerance'] = { offset: 50 }): Train =>
  twoMachines(tolerance, [known(found.y, found.z, u)], {}, { plan: { ...sharp, ...plan } })

/** The offset at mid-span (um) that the second builder's plan leaves, 100 mm before the first feet at 1000. */
async function left(train: Train): Promise<{ y: number; z: number }> {
  const { bodies, status } = await solveSecond(train)
  expect(status).toBe('planned')
  const { ty = NaN, tz = NaN, sy = NaN, sz = NaN } = bodies.B ?? {}
  return { y: found.y + ty + sy * (100 - 1500), z: found.z + tz + sz * (100 - 1500) }
}

describe('a guard', () => {
  test('keeps k standard uncertainties free beside the share', async () => {
    expect((await left(low({}))).z).toBeCloseTo(-50, 3)
    expect((await left(low({ guard: 0 }))).z).toBeCloseTo(-50, 3)
    expect((await left(low({ guard: 2 }))).z).toBeCloseTo(-(50 - 2 * 10), 3)
    expect((await left(low({ guard: 2, share: 0.8 }))).z).toBeCloseTo(-(0.8 * 50 - 2 * 10), 3)
  })

  test('counts the work of every free body, whether it moves or not', async () => {
    // a row of two shims errs by 20 / sqrt 2; what the feet do counts 1.9 and -0.9 times at mid-span
    const u = Math.hypot(10, (20 / Math.SQRT2) * Math.hypot(1.9, 0.9))
    const train = low({ guard: 1, sure: { shim: 20, slide: 0, foot: 50 } })
    expect((await left(train)).z).toBeCloseTo(-(50 - u), 3)
    expect((await solveSecond({ ...train, plan: { ...train.plan, guard: 1.7 } })).status).toBe(
      'impossible',
    )
  })

  test('asks it of what stands still too', async () => {
    const near = (guard: number) =>
      twoMachines({ offset: 50 }, [known(0, -35, 10)], {}, { plan: { ...sharp, guard } })
    expect((await solveSecond(near(1))).status).toBe('in-tolerance')
    expect((await solveSecond(near(2))).status).toBe('planned')
  })

  test('is impossible where it leaves nothing', async () => {
    expect((await solveSecond(low({ guard: 4.9 }))).status).toBe('planned')
    expect((await solveSecond(low({ guard: 5.1 }))).status).toBe('impossible')
  })

  test('takes the same off a round tolerance in every direction where both are known alike', async () => {
    const tolerance = { offset: 50, shape: 'round' } as const
    const { y, z } = await left(low({ guard: 2 }, 10, tolerance))
    expect(Math.hypot(y, z)).toBeCloseTo(30, 3)
  })

  test('takes off a round tolerance what each direction is uncertain by', async () => {
    const [line] = low({}).couplings.flatMap((c) => c.found)
    if (line?.kind !== 'line') throw new Error('no line')
    const train = low({ guard: 1 }, 5, { offset: 50, shape: 'round' })
    const [c] = train.couplings
    if (c)
      c.found = [
        { ...line, offset: { y: 0 }, u: 30, uSlope: exact },
        { ...line, offset: { z: -300 }, slope: {}, u: 5 },
      ]
    const { y, z } = await left(train)
    const reaches = Array.from({ length: 36_000 }, (_, i) => {
      const [cos, sin] = [Math.cos(i / 5729.6), Math.sin(i / 5729.6)]
      return cos * y + sin * z + Math.hypot(30 * cos, 5 * sin)
    })
    expect(Math.max(...reaches)).toBeCloseTo(50, 3)
    // between the room of the worse known direction and that of the better known one
    expect(z).toBeLessThan(-(50 - 30))
    expect(z).toBeGreaterThan(-(50 - 5))
  })

  test('holds on random trains, and the cheapest plan stands at its edge', async () => {
    const seen = { held: 0, tight: 0 }
    for (let seed = 1; seen.held < 12; seed++) {
      const train = randomSureTrain(seed)
      train.plan = { ...train.plan, share: 1, guard: 0.7 }
      const { status, bodies } = await solveSecond(train)
      if (status !== 'planned') continue
      seen.held += 1
      const kept = judge(train, bodies)
      expect(kept.violation, `seed ${seed}`).toBeLessThan(1e-3)
      expect(kept.keptShare, `seed ${seed}`).toBeLessThan(1 + 1e-6)
      if (kept.keptShare > 1 - 1e-6) seen.tight += 1
    }
    expect(seen.tight).toBeGreaterThan(4)
  })
})

/** The same with a growth of the right machine; the left one is known to stay where it is. */
function growing(plan: Plan, tolerance: Coupling['tolerance'], points: GrowthPoint[]): Train {
  const train = twoMachines(
    tolerance,
    [known(0, -300, exact)],
    { growth: { hot: points } },
    { plan: { ...sharp, ...plan }, states: [{ id: 'hot', name: 'Hot' }] },
  )
  const still = { hot: [{ at: 0, rise: 0, side: 0, u: 0 }] }
  const machines = train.machines.map((machine) => ({ growth: still, ...machine }))
  return { ...train, machines }
}

describe('intervals of growth with worst', () => {
  const points = (a: [number, number], b: [number, number]): GrowthPoint[] => [
    { at: 1000, range: { rise: a }, side: 0 },
    { at: 2000, range: { rise: b }, side: 0 },
  ]
  const box = { offset: 100 }

  test('leave room for their farthest ends, and count as their middle without it', async () => {
    // middles 20 and 10: at mid-span 1.9 * 20 - 0.9 * 10 = 29; half widths 10 and 20
    const of = points([10, 30], [-10, 30])
    expect((await left(growing({}, box, of))).z + 29).toBeCloseTo(-100, 3)
    const room = 1.9 * 10 + 0.9 * 20
    expect((await left(growing({ worst: true }, box, of))).z + 29).toBeCloseTo(-(100 - room), 3)
  })

  test('hold for every value within, and for one of them only just', async () => {
    for (const tolerance of [box, { offset: 90, angle: 0.4, shape: 'round' } as const]) {
      const both = points([10, 30], [-10, 30]).map((p, i) => ({
        ...p,
        side: undefined,
        range: { ...p.range, side: [-15, 5 + 10 * i] as [number, number] },
      }))
      const train = growing({ worst: true, share: 0.9 }, tolerance, both)
      const { status, bodies } = await solveSecond(train)
      expect(status).toBe('planned')
      const shares = corners(both).map(
        (values) => judge(growing({}, tolerance, values), bodies).worstShare,
      )
      expect(shares).toHaveLength(16)
      // the worst corner of the box is the worst value of a convex check
      expect(Math.max(...shares)).toBeCloseTo(0.9, 5)
    }
  })

  test('are no uncertainty of the guard beside that', async () => {
    const of = points([10, 30], [10, 10])
    const guarded = (await left(growing({ worst: true, guard: 3 }, box, of))).z
    // nothing else is uncertain upward: the line is exact
    expect(guarded + 29).toBeCloseTo(-(100 - 1.9 * 10), 3)
    const without = (await left(growing({ guard: 3 }, box, of))).z
    const u = (1.9 * 10) / Math.sqrt(3)
    expect(without + 29).toBeCloseTo(-(100 - 3 * u), 3)
  })
})

/** Every choice of ends of the intervals. */
function corners(points: GrowthPoint[]): GrowthPoint[][] {
  return points.reduce<GrowthPoint[][]>(
    (lists, { at, range }) =>
      lists.flatMap((list) =>
        [0, 1].flatMap((i) =>
          [0, 1].map((k) => [...list, { at, rise: range?.rise?.[i], side: range?.side?.[k] }]),
        ),
      ),
    [[]],
  )
}

test('the spread in a direction is that of the two it is made of', () => {
  for (const { covariance } of ofAnyPlan(metric(randomSureTrain(5)))) {
    const along = (angle: number) => spreadIn(covariance, Math.cos(angle), Math.sin(angle)) ** 2
    // any two directions at right angles have the same sum of variances
    expect(along(0.7) + along(0.7 + Math.PI / 2)).toBeCloseTo(covariance.yy + covariance.zz, 6)
  }
})
