import { describe, expect, it } from 'vitest'
import type { AnswerJson } from '../../src/json/answerJson'
import { mustPlan } from '../planned'
import { packsText } from '../../src/text/packsText'
import {
  answerOf,
  at,
  close,
  fourFeet,
  given,
  pair,
  planOf,
  trainOf,
  type Json,
} from '../engine/pair'

/**
 * Sums by hand on the pair: what the feet at 1000 rise by a and those at 2000 by b counts
 * 1.9 a - 0.9 b at mid-span, where 100 um is the tolerance and the share asked for 0.7.
 */
const share = 0.7

interface Shims {
  step: number
  stock: number[]
  most?: number
  rebuild?: boolean
  flat?: number
}

/** The pump planned with a store of shims; feet get what is given for their row. */
function rounded(
  z: number,
  shims: Shims,
  rows: Partial<Record<'1000' | '1500' | '2000', Json>>,
  rest: { slope?: number; feet?: readonly Json[]; coupling?: Json; plan?: Json } = {},
) {
  const feet = (rest.feet ?? fourFeet).map((foot) => ({
    ...foot,
    ...rows[String(foot['x']) as '1000'],
  }))
  const document = pair({
    right: { feet },
    found: [given(0, z, 0, rest.slope ?? 0)],
    coupling: rest.coupling ?? {},
    rest: { plan: { share, shims, ...rest.plan } },
  })
  const answer = planOf(document)
  if (!answer.rounded) throw new Error(`not rounded: ${answer.status}`)
  return { answer, rounded: answer.rounded, text: textOf(document) }
}

function textOf(document: Json): string {
  const { rounded } = mustPlan(answerOf(document))
  if (!rounded) throw new Error('not rounded')
  return packsText(trainOf(document), rounded).join('\n').replace(/\s+/g, ' ')
}

const changes = ({ packs = [] }: AnswerJson) => packs.map(({ foot, change }) => [foot, change])

/** A foot that stays where it is unless it is lifted, and may be lifted this far. */
const upTo = (lift: number): Json => ({ lift, pack: { now: 1000, min: 1000 } })
const stays = upTo(0)
/** Plates of 100 um alone. */
const hundreds: Shims = { step: 100, stock: [100, 200, 500] }

describe('a rounding that can only be had over the share asked for', () => {
  // 145 high: 95 are to go, b = 105.6; of 0 and 100 the 100 leaves 145 - 90 = 55 and 0.55 of tolerance
  const over = () =>
    rounded(145, hundreds, { 1000: stays, 2000: upTo(120) }, { plan: { share: 0.5 } })

  it('is the one that uses least of the tolerance, and is called what it is', () => {
    const { answer, rounded: plan } = over()
    expect(at(answer.feet, 2).shim).toBeCloseTo(95 / 0.9, 3)
    expect(plan.status).toBe('over the share asked for')
    expect(changes(answer)).toEqual([
      ['2000a', 100],
      ['2000b', 100],
    ])
    expect(plan.worstShare).toBeCloseTo(0.55, 9)
    expect([plan.cost, plan.bound]).toEqual([close(200, 6), close(200, 3)])
  })

  it('says so in the sentence and in the text', () => {
    const { rounded: plan, text } = over()
    expect(plan.sentence).toContain('the tightest coupling then uses 55 % of its tolerance')
    expect(plan.sentence).toContain(
      'That is over the 50 % asked for: no rounding within it was found.',
    )
    expect(text).toContain(plan.sentence)
  })
})

describe('a train that no shims of the store put right', () => {
  // 200 high: the least move takes b = 144.4; of 0 and 100 the 100 leaves 110, over the whole tolerance
  const none = () => rounded(200, hundreds, { 1000: stays, 2000: upTo(150) })

  it('has no packs and no cost, and says what is passed', () => {
    const { answer, rounded: plan } = none()
    expect(answer.status).toBe('planned')
    expect(plan.status).toBe('no rounding')
    expect(answer.packs).toBeUndefined()
    expect([plan.cost, plan.bodies, plan.expected]).toEqual([undefined, undefined, undefined])
    expect(plan.worstShare).toBeCloseTo(1.1, 9)
    expect(plan.why?.join('\n')).toContain(
      'every foot by itself: Motor to Pump would use 110 % of its tolerance',
    )
  })

  it('says plainly that there are none, and what was tried', () => {
    const { rounded: plan, text } = none()
    expect(at(plan.why, 0)).toBe(
      'no packs from the stock under the pump keep every limit and the whole of every tolerance',
    )
    expect(at(plan.why, 1)).toMatch(
      /^tried: all feet together within 70 % and within the whole of every tolerance, to the end of the search \(\d+ programs solved\); every foot by itself$/,
    )
    expect(text).toContain('The shims of the store do not give a plan')
    expect(text).toContain('tried: all feet together')
    expect(text).toContain('that is not a plan')
  })
})

describe('moves under the setting', () => {
  // one foot at 2000: the angle may be 0.175, 0.3 is found, so a - b must be 125. b costs half of a,
  // but its pack gives 15 and no more.
  const three = fourFeet.slice(0, 3).map((foot) => (foot.x === 2000 ? { ...foot, y: 0 } : foot))
  const angle = (low: number, slope = 0.3) =>
    rounded(
      0,
      { step: 5, stock: [5, 10, 50, 100, 500], most: 10 },
      { 2000: { pack: { now: 1000, min: 1000 - low } } },
      { slope, feet: three, coupling: { tolerance: { angle: 0.25 } } },
    )

  it('are left alone where that costs next to nothing, and that is told', () => {
    // 1.175 found: a - b must be 1000, so 985 twice and 15, or 1000 twice, 0.8 % more
    const { answer, rounded: plan, text } = angle(15, 1.175)
    expect(at(answer.feet, 2).shim).toBeCloseTo(-15, 6)
    expect(changes(answer)).toEqual([
      ['1000a', 1000],
      ['1000b', 1000],
    ])
    expect(plan.left).toEqual([{ body: 'B', foot: '2000a', move: close(-15, 6) }])
    expect(plan.small).toEqual([])
    expect(plan.before.cost).toBeCloseTo(2 * 985 + 15, 2)
    expect([plan.cost, plan.bound, plan.gap]).toEqual([
      close(2000, 6),
      close(1985, 2),
      close(15, 2),
    ])
    expect(plan.ways).toEqual({ told: close(1985, 2), alone: close(2000, 2) })
    expect(plan.worstShare).toBeLessThan(share + 1e-6)
    expect(plan.sentence).toContain('Leaving moves under 20 µm alone costs 15 µm of that.')
    expect(plan.sentence).not.toContain('The search was ended')
    expect(text).toContain('Left alone, 1 move under 20 µm: Pump foot 2000a 15 µm.')
  })

  it('are told where leaving them alone is dearer, and by how much', () => {
    // 110 twice and 15, or 125 twice
    const { answer, rounded: plan, text } = angle(15)
    expect(changes(answer)).toEqual([
      ['1000a', 110],
      ['1000b', 110],
      ['2000a', -15],
    ])
    expect([plan.cost, plan.bound]).toEqual([close(235, 6), close(235, 2)])
    expect(plan.ways).toEqual({ told: close(235, 2), alone: close(250, 2) })
    expect(plan.left).toEqual([])
    expect(plan.small).toEqual([{ body: 'B', foot: '2000a', move: -15 }])
    expect(text).toContain(
      'Told although under 20 µm, as leaving all of them alone would cost 250 µm in place of 235 µm, 1 move: Pump foot 2000a 15 µm.',
    )
  })

  it('are none from the setting on', () => {
    const { answer, rounded: plan } = angle(20)
    expect(changes(answer)).toEqual([
      ['1000a', 105],
      ['1000b', 105],
      ['2000a', -20],
    ])
    expect([plan.left, plan.small]).toEqual([[], []])
  })

  it('stay where the proof does not hold without them, and that is told', () => {
    // 75 low: a must rise 2.6; it cannot rise 20, and b stays
    const small = rounded(
      -75,
      { step: 5, stock: [5, 10, 50, 100] },
      { 1000: upTo(15), 2000: stays },
    )
    expect(changes(small.answer)).toEqual([
      ['1000a', 5],
      ['1000b', 5],
    ])
    expect(small.rounded.small).toEqual([
      { body: 'B', foot: '1000a', move: 5 },
      { body: 'B', foot: '1000b', move: 5 },
    ])
    expect(small.rounded.left).toEqual([])
    expect(small.text).toContain(
      'Told although under 20 µm, as no rounding was found without, 2 moves: Pump foot 1000a 5 µm and Pump foot 1000b 5 µm.',
    )
  })

  it('are all told where the setting is 0', () => {
    const { answer, rounded: plan } = rounded(
      0,
      { step: 5, stock: [5, 10, 50, 100] },
      { 2000: { pack: { now: 1000, min: 985 } } },
      { slope: 0.3, feet: three, coupling: { tolerance: { angle: 0.25 } }, plan: { leave: 0 } },
    )
    expect(changes(answer)).toEqual([
      ['1000a', 110],
      ['1000b', 110],
      ['2000a', -15],
    ])
    expect([plan.left, plan.small]).toEqual([[], []])
  })
})

describe('a machine on three rows', () => {
  /**
   * 300 low: 1.9 a - 0.9 b must be 230 to 370, in hundreds, nothing out. Heights h1 h2 h3 lie
   * (2 h2 - h1 - h3) / 3 off their plane in the middle and half of that at the ends, the other way.
   */
  const six = [1000, 1500, 2000].flatMap((x) =>
    [300, -300].map((y) => ({ id: `${x}${y > 0 ? 'a' : 'b'}`, x, y })),
  )
  const up: Json = { pack: { now: 1000, min: 1000 } }
  const onThree = (flat?: number) =>
    rounded(
      -300,
      { ...hundreds, ...(flat !== undefined && { flat }) },
      { 1000: up, 1500: up, 2000: up },
      { feet: six },
    )
  const heights = ({ feet }: { feet: readonly { shim: number }[] }) =>
    [0, 2, 4].map((f) => feet[f]?.shim)

  it('keeps its ends planar: within 25 um only all feet alike will do', () => {
    const { rounded: plan } = onThree()
    expect(heights(plan)).toEqual([300, 300, 300])
    expect([plan.cost, plan.flat]).toEqual([close(1800, 6), close(0, 6)])
  })

  it('may stand off by what is stated, and says by how much', () => {
    // 200 100 100: plane 183.3 to 83.3, which counts 273.3
    const { rounded: plan, text } = onThree(35)
    expect(heights(plan)).toEqual([200, 100, 100])
    expect(plan.cost).toBeCloseTo(800, 6)
    expect(plan.feet.map(({ offPlane }) => offPlane)).toEqual(
      [100 / 6, 100 / 6, -100 / 3, -100 / 3, 100 / 6, 100 / 6].map((v) => close(v, 6)),
    )
    expect(plan.flat).toBeCloseTo(100 / 3, 6)
    expect(plan.worstShare).toBeCloseTo((300 - 820 / 3) / 100, 6)
    expect(text).toContain(
      'On three rows of feet or more a foot stands up to 33 µm off the plane in which its machine lies.',
    )
  })
})

describe('packs', () => {
  // 300 low: a must rise 121.1 to 194.7; the feet at 2000 stay
  const store: Shims = { step: 50, stock: [50, 100, 200, 500, 1000] }
  const pack = { pack: { now: 1030 } }

  it('that are kept take plates on top', () => {
    const { answer, text } = rounded(-300, store, { 1000: pack, 2000: stays })
    expect(answer.packs).toEqual(
      ['1000a', '1000b'].map((foot) => ({
        body: 'B',
        foot,
        change: 150,
        packAfter: 1180,
        out: [],
        use: [100, 50],
      })),
    )
    expect(text).toContain('put in 100 + 50 µm')
  })

  it('that are made anew are sums of the stock, whole steps themselves', () => {
    const { answer, text } = rounded(-300, { ...store, rebuild: true }, { 1000: pack, 2000: stays })
    expect(answer.packs).toEqual(
      ['1000a', '1000b'].map((foot) => ({
        body: 'B',
        foot,
        change: 170,
        packAfter: 1200,
        out: [1030],
        use: [1000, 200],
      })),
    )
    expect(text).toContain('take the pack out, put in 1000 + 200 µm (170 more)')
  })

  it('that are lowered give whole steps, or are made anew of what is thinner', () => {
    // 300 high: a must sink as far
    const low = { 1000: pack, 2000: stays }
    expect(rounded(300, store, low).answer.packs).toEqual(
      ['1000a', '1000b'].map((foot) => ({
        body: 'B',
        foot,
        change: -150,
        packAfter: 880,
        out: [150],
        use: [],
      })),
    )
    // of 850 and 900 under 1030 the nearer, 130 less
    expect(rounded(300, { ...store, rebuild: true }, low).answer.packs).toMatchObject([
      { foot: '1000a', change: -130, packAfter: 900, out: [1030], use: [500, 200, 200] },
      { foot: '1000b', change: -130, packAfter: 900, out: [1030], use: [500, 200, 200] },
    ])
  })

  describe('that get thinner by less than the thinnest plate of the store', () => {
    // 100 high: a must sink 15.8; 20 is the first step, and no plate
    const thinner = (stock: number[], of: Json) =>
      rounded(100, { step: 10, stock }, { 1000: { pack: of }, 2000: stays })

    it('give up more, and get some of it back', () => {
      const { answer, text } = thinner([50, 70, 100], { now: 1000 })
      expect(answer.packs).toMatchObject([
        { foot: '1000a', change: -20, out: [70], use: [50] },
        { foot: '1000b', change: -20, out: [70], use: [50] },
      ])
      expect(text).toContain('take out 70, put in 50 µm (20 less)')
    })

    it('are made anew where that is sure', () => {
      const { answer, text } = thinner([50, 100, 1000], { now: 1020 })
      expect(answer.packs).toMatchObject([
        { foot: '1000a', change: -20, packAfter: 1000, out: [1020], use: [1000] },
        { foot: '1000b', change: -20 },
      ])
      expect(text).toContain('take the pack out, put in 1000 µm (20 less)')
    })

    it('are told plate by plate where the plates are entered', () => {
      const lying = (plates: number[]) => thinner([50, 80, 100], { now: 1000, plates })
      const swapped = lying([500, 250, 100, 100, 50])
      expect(swapped.answer.packs).toMatchObject([{ out: [100], use: [80] }, {}])
      expect(swapped.text).toContain('take out 100, put in 80 µm (20 less)')
      const plain = lying([970, 20, 10])
      expect(plain.answer.packs).toMatchObject([{ out: [20], use: [] }, {}])
      expect(plain.text).toContain('take out 20 µm')
      // nothing that lies there or in the store is 20: 30 less is the first that can be made
      const third = thinner([50, 70], { now: 1000, plates: [900, 100] }).answer.packs
      expect(third).toMatchObject([{ change: -30, out: [100], use: [70] }, {}])
    })

    it('count plates only while these add up to the pack', () => {
      const { answer } = thinner([50, 70], { now: 1000, plates: [900, 50] })
      expect(answer.packs).toMatchObject([{ change: -20, out: [70], use: [50] }, {}])
      expect(answer.findings).toContainEqual({
        where: 'machines[1].feet[0].pack.plates',
        what: 'plates of Pump foot 1000a add up to 950 µm, and its pack is 1000 µm: they are not counted on; measure the pack and write down each plate',
      })
    })
  })

  it('of one plate at most may take shims out elsewhere', () => {
    // 150 is two plates of 50 and 100; with one, 100 in at 1000 and 50 out at 2000 count 235
    const two = { step: 50, stock: [50, 100], most: 2 }
    expect(changes(rounded(-300, two, { 1000: pack, 2000: pack }).answer)).toEqual([
      ['1000a', 150],
      ['1000b', 150],
    ])
    const one = rounded(-300, { ...two, most: 1 }, { 1000: pack, 2000: pack })
    expect(changes(one.answer)).toEqual([
      ['1000a', 100],
      ['1000b', 100],
      ['2000a', -50],
      ['2000b', -50],
    ])
    expect(one.rounded.status).toBe('rounded')
  })

  it('of one plate at most may not be enough at all', () => {
    const { rounded: plan } = rounded(
      -300,
      { step: 50, stock: [50, 100], most: 1 },
      { 1000: pack, 2000: stays },
    )
    expect(plan.status).toBe('no rounding')
  })
})
