import { describe, expect, it } from 'vitest'
import { solveSymmetric } from '../../src/mechanics/symmetric'
import { footGap } from '../../src/engine/fieldwork/ready/footGap'
import { settledBy } from '../../src/engine/fieldwork/ready/settled'
import { softFoot } from '../../src/engine/fieldwork/ready/softFoot'
import { Random } from '../second/random'
import { at, fourFeet, given, pair, solver, trainOf, type Json } from '../engine/pair'

/** Corners of a rectangle in the order of `fourFeet`: 1 and 4, 2 and 3 are its diagonals. */
const soft = (...gaps: (number | undefined)[]) =>
  fourFeet.map((foot, i) => (gaps[i] === undefined ? foot : { ...foot, soft: gaps[i] }))

const judged = (feet: readonly Json[], rest: Json = {}) => {
  const train = trainOf(pair({ right: { feet }, rest }))
  return softFoot(train, at(train.bodies, 1), solver)
}

const shimsOf = (feet: readonly Json[], rest: Json = {}) =>
  judged(feet, rest).shims?.map(({ shim }) => Math.round(shim * 1000) / 1000)

const inMils: Json = { units: { length: 'in', fine: 'mil' } }

describe('a body on four feet', () => {
  it('is sound up to 0.05 mm, and up to 2 mil where mils are used', () => {
    expect(judged(soft(50, 0, 0, 50)).verdict).toBe('sound')
    expect(judged(soft(51, 0, 0, 51)).verdict).toBe('soft')
    expect(judged(soft(2, 0, 0, 2), inMils).verdict).toBe('sound')
    expect(judged(soft(2.1, 0, 0, 2.1), inMils).verdict).toBe('soft')
    expect(judged(soft(50, 0, 0, 50)).limit.source).toMatch(/API RP 686.*secondary/)
  })

  it('shows the same under both feet of a diagonal, and one shim takes it away', () => {
    const both = judged(soft(200, 0, 0, 200))
    expect(both.shims?.reduce((sum, { exact }) => sum + exact, 0)).toBeCloseTo(200, 6)
    expect(both.shims?.filter(({ shim }) => shim > 0)).toHaveLength(1)
    expect(both.leaves).toBeCloseTo(0, 6)
    expect(both.unexplained).toBeCloseTo(0, 5)
    // the other diagonal, and where both feet of it do not show alike the one that shows more
    expect(shimsOf(soft(0, 120, 140, 0))).toEqual([0, 0, 130, 0])
    expect(shimsOf(soft(0, 140, 120, 0))).toEqual([0, 130, 0, 0])
  })

  it('gives what a published example gives: 5 and 2 mil across a diagonal, 3 mil under the first', () => {
    // Reclamation FIST, read in a stored copy. A stiff frame would show 3.5 at both: in whole mils,
    // half a step down, 3; neither foot then stands off by more than the 2 mil that are allowed
    const shims = { step: 1, stock: [1, 2, 3, 5] }
    const example = judged(soft(5, 0, 0, 2), { ...inMils, plan: { shims } })
    expect(example.shims?.map(({ shim }) => Math.round((shim / 25.4) * 1e6) / 1e6)).toEqual([
      3, 0, 0, 0,
    ])
    expect(at(example.shims, 0).exact / 25.4).toBeCloseTo(3.5, 6)
    expect(example.unexplained / 25.4).toBeCloseTo(1.5, 6)
    expect((example.leaves ?? NaN) / 25.4).toBeCloseTo(0.5, 6)
  })

  it('is not shimmed where all feet show alike: no plane explains that', () => {
    const all = judged(soft(80, 80, 80, 80))
    expect(all.verdict).toBe('soft')
    expect(all.shims).toBeUndefined()
    expect(all.why).toMatch(/springing packs/)
    expect(all.unexplained).toBeCloseTo(80, 6)
    // a small rise at the feet that press is not taken for air
    expect(shimsOf(soft(200, 10, 10, 200))?.reduce((a, b) => a + b)).toBeCloseTo(200, 3)
  })

  it('asks for the feet that were not read', () => {
    expect(judged(soft()).verdict).toBe('none')
    expect(judged(soft(10, undefined, 0, 0))).toMatchObject({ verdict: 'part', unread: ['1000b'] })
    const some = judged(soft(200, undefined, 0, 0))
    expect(some).toMatchObject({ verdict: 'soft', unread: ['1000b'] })
    expect(some.shims).toBeUndefined()
    expect(some.why).toMatch(/read them all/)
  })

  it('leaves feet alone that cannot be shimmed, and says when none can', () => {
    const keyed = (...which: number[]) =>
      soft(200, 0, 0, 200).map((foot, i) =>
        which.includes(i) ? { ...foot, free: { shim: false } } : foot,
      )
    expect(shimsOf(keyed(0))).toEqual([0, 0, 0, 200])
    expect(shimsOf(keyed(3))).toEqual([200, 0, 0, 0])
    expect(judged(keyed(0, 3)).why).toMatch(/cannot make it plane/)
    const full = soft(200, 0, 0, 200).map((foot, i) =>
      i === 0 ? { ...foot, pack: { now: 3000, max: 3050 } } : foot,
    )
    // 50 is all that fits there: the rest goes under the other foot of the diagonal
    expect(shimsOf(full)).toEqual([50, 0, 0, 150])
  })
})

describe('bodies on other feet', () => {
  it('on three feet or on one line stand on a plane whatever lies under them', () => {
    const three = judged(soft(200, 0, 0).slice(0, 3))
    expect(three).toMatchObject({ verdict: 'soft' })
    expect(three.shims).toBeUndefined()
    const line = judged([
      { id: '1', x: 1000, soft: 90 },
      { id: '2', x: 2000, soft: 0 },
    ])
    expect(line.why).toMatch(/bent foot/)
  })

  /** Three rows of two feet. */
  const sixFeet = [1000, 1700, 2600].flatMap((x) =>
    [300, -400].map((y) => ({ id: `${x} ${y}`, x, y })),
  )

  /** Plane of some feet at another, by normal equations: other arithmetic than the planner's. */
  function planeAt(feet: readonly { x: number; y: number; h: number }[], x: number, y: number) {
    const matrix = [0, 1, 2].map(() => [0, 0, 0])
    const right = [0, 0, 0]
    for (const foot of feet) {
      const row = [1, (foot.x - 1700) / 1000, foot.y / 1000]
      row.forEach((a, i) => {
        row.forEach((b, j) => {
          const line = at(matrix, i)
          line[j] = at(line, j) + a * b
        })
        right[i] = at(right, i) + a * foot.h
      })
    }
    const [a = 0, b = 0, c = 0] = solveSymmetric(matrix, right)
    return a + (b * (x - 1700)) / 1000 + (c * y) / 1000
  }

  /** Least sum of shims by looking at every plane through three of the feet. */
  function leastByHand(feet: readonly { x: number; y: number; h: number }[]): number {
    let least = Infinity
    feet.forEach((_, i) => {
      feet.slice(i + 1).forEach((__, j) => {
        feet.slice(i + j + 2).forEach((___, k) => {
          const three = [feet[i], feet[i + 1 + j], feet[i + j + 2 + k]].flatMap((f) => f ?? [])
          const gaps = feet.map((foot) => planeAt(three, foot.x, foot.y) - foot.h)
          if (Math.min(...gaps) > -1e-6)
            least = Math.min(
              least,
              gaps.reduce((a, b) => a + b, 0),
            )
        })
      })
    })
    return least
  }

  it('on six: 60 random beds are read one foot at a time and made plane again, least in sum', () => {
    let counted = 0
    let settled = 0
    for (let seed = 1; seed <= 60; seed++) {
      const random = new Random(seed)
      const bed = sixFeet.map((foot) => ({
        ...foot,
        h: random.chance(0.4) ? -random.between(60, 400) : 0,
      }))
      const readings = bed.map((foot, i) => ({
        ...foot,
        soft: Math.max(
          0,
          planeAt(
            bed.filter((_, k) => k !== i),
            foot.x,
            foot.y,
          ) - foot.h,
        ),
      }))
      const feet = readings.map(({ id, x, y, soft: rise }) => ({ id, x, y, soft: rise }))
      const answer = judged(feet)
      if (answer.verdict !== 'soft') continue
      counted++
      // the departure it found shows the very gaps that were read
      expect(answer.unexplained, `seed ${seed}`).toBeLessThan(1e-2)
      const shimmed = (answer.shims ?? []).map(({ exact }) => exact)
      expect(shimmed, `seed ${seed}`).toHaveLength(6)
      expect(Math.min(...shimmed)).toBeGreaterThanOrEqual(0)
      // read again with the shims in: of the beds that show these gaps the flattest is plane now
      const sum = shimmed.reduce((a, b) => a + b, 0)
      expect(answer.leaves, `seed ${seed}`).toBeLessThan(1e-3)
      // where the readings settle the bed (three feet stand off), it is this bed and its least sum
      if (readings.filter((foot) => foot.soft > 1).length < 3) continue
      settled++
      const again = bed.map((foot, i) => ({ ...foot, h: foot.h + at(shimmed, i) }))
      again.forEach((foot, i) => {
        const others = again.filter((_, k) => k !== i)
        expect(Math.abs(planeAt(others, foot.x, foot.y) - foot.h), `seed ${seed}`).toBeLessThan(0.1)
      })
      expect(Math.abs(sum - leastByHand(bed)), `seed ${seed}`).toBeLessThan(0.1)
    }
    expect(counted).toBeGreaterThan(40)
    expect(settled).toBeGreaterThan(15)
  })
})

describe('a foot with four gaps', () => {
  // left end toward 3, left toward 9, right toward 3, right toward 9
  const read = (gaps: [number, number, number, number], rise?: number) => {
    const feet = [{ ...at(fourFeet, 0), gaps, ...(rise === undefined ? {} : { soft: rise }) }]
    const train = trainOf(pair({ right: { feet: [...feet, ...fourFeet.slice(1)] } }))
    const gap = footGap(at(at(train.bodies, 1).feet, 0))
    if (!gap) throw new Error('not read')
    return gap
  }

  it('is parallel where they are alike, angled where they open, and the wedge has its direction', () => {
    expect(read([90, 100, 95, 100])).toMatchObject({ kinds: ['parallel'], gap: 96.25, rise: 100 })
    expect(read([0, 0, 10, 10]).kinds).toEqual([])
    expect(read([0, 100, 50, 150])).toMatchObject({
      kinds: ['angled'],
      gap: 75,
      taper: { least: 0, most: 150, toRight: 50, toThree: -100 },
    })
  })

  it('is springing where it rises more than the widest gap, and uneven where no plane fits', () => {
    expect(read([10, 10, 10, 10], 120)).toMatchObject({
      kinds: ['springing'],
      springs: 110,
      rise: 120,
    })
    expect(read([60, 60, 60, 60], 80).kinds).toEqual(['parallel'])
    expect(read([100, 0, 0, 100]).kinds).toEqual(['parallel', 'uneven'])
  })
})

describe('what the shims do to the shafts', () => {
  it('is the motion of the mean plane of what lies under the feet', () => {
    const train = trainOf(pair({ found: [given(0, 0)] }))
    // 200 under one foot of four: 50 up, 0.1 mrad down to the right, 0.1667 mrad up toward 3
    const { motion, couplings } = settledBy(train, 1, [{ foot: '1000a', shim: 200, exact: 200 }])
    expect(motion).toMatchObject({ tx: 0, ty: 0, sy: 0 })
    expect(motion.tz).toBeCloseTo(50, 9)
    expect(motion.sz).toBeCloseTo(-0.1, 9)
    expect(motion.roll).toBeCloseTo(200 / 4 / 300, 9)
    // at mid-span, 1400 mm left of the feet's middle: 50 + 140 up; the roll swings the axis 400 up toward 9
    const { by } = at(couplings, 0)
    expect(by.z).toBeCloseTo(190, 9)
    expect(by.sz).toBeCloseTo(-0.1, 9)
    expect(by.y).toBeCloseTo(-400 / 6, 9)
    expect(by.sy).toBeCloseTo(0, 9)
  })

  it('is nothing where the same goes under all feet but a rise', () => {
    const train = trainOf(pair({ found: [given(0, 0)] }))
    const all = fourFeet.map(({ id }) => ({ foot: id, shim: 30, exact: 30 }))
    const { motion } = settledBy(train, 1, all)
    expect(motion.tz).toBeCloseTo(30, 9)
    expect(motion.sz).toBeCloseTo(0, 9)
    expect(motion.roll).toBeCloseTo(0, 9)
    expect(settledBy(train, 1, []).couplings).toEqual([])
  })
})
