import { describe, expect, it } from 'vitest'
import { asFound } from '../../src/mechanics/readings/asFound'
import { sharesOf } from '../../src/mechanics/misalignment/shares'
import { sharesAfter } from '../../src/engine/proof/couplingsMet'
import { noMotion } from '../../src/mechanics/motion'
import { settingBeside } from '../../src/mechanics/misalignment/settingBeside'
import { settingInLines, settingWords } from '../../src/engine/plan/settingWords'
import { at, given, pair, planOf, trainOf, type Json } from './pair'

const why = 'measured on the test stand'
const states = [
  { id: 'cold', name: 'cold' },
  { id: 'hot', name: 'hot', tolerance: 2 },
]
/** The left machine grows 250 up and 40 toward 3 in "hot": the right one then lies 250 low, 40 toward 9. */
const growth = { hot: [{ at: 0, rise: 250, side: 40 }] }

/** The pair, its right machine found at (y, z, slopes) against the left one. */
const train = (line: Json, coupling: Json, more: Json = {}) =>
  trainOf(
    pair({
      left: { growth },
      found: [line],
      coupling: { tolerance: { offset: 100, angle: 1 }, ...coupling },
      rest: { states, ...more },
    }),
  )

/** Offset and angle checks by state, both by the planner's arithmetic and by the proof's. */
const judged = (line: Json, coupling: Json) => {
  const read = train(line, coupling)
  const found = read.couplings.map(asFound)
  const standing = sharesOf(read, found)
  const proven = sharesAfter(
    read,
    found.map((f) => f.line),
    read.bodies.map(() => noMotion),
  )
  proven.forEach(({ share }, i) => {
    expect(share).toBeCloseTo(at(standing, i).share, 12)
  })
  return standing.map(({ checks }) => checks.map(({ y, z, limit }) => [y, z, limit]))
}

describe("a maker's cold setting", () => {
  const setting = { offset: { y: -60, z: 300 }, slope: { z: 0.25 } }

  it('only stands beside growth where it is not used', () => {
    const without = judged(given(-50, 280, 0.1, 0.2), {})
    expect(judged(given(-50, 280, 0.1, 0.2), { setting })).toEqual(without)
    expect(judged(given(-50, 280, 0.1, 0.2), { setting: { ...setting, use: false } })).toEqual(
      without,
    )
    // 280 high less the 250 that the motor rises, 50 toward 9 and 40 more
    expect(at(at(without, 1), 0)).toEqual([-90, 30, 200])
  })

  it('is told beside the lines of states, which are drawn by growth, where it is used', () => {
    const line = given(-50, 280, 0.1, 0.2)
    expect(settingInLines(train(line, {}))).toBeUndefined()
    expect(settingInLines(train(line, { setting }))).toBeUndefined()
    const used = train(line, { setting: { ...setting, use: true, why } })
    expect(settingInLines(used)).toMatch(
      /^At .+ the maker's cold setting decides, .*growth figures, which do not count there\.$/,
    )
    expect(settingInLines(used)).toContain(used.couplings[0]?.name)
  })

  it('is the only thing the coupling is judged by, in every state, where it is used', () => {
    const [cold, hot] = judged(given(-50, 280, 0.1, 0.2), {
      setting: { ...setting, use: true, why },
    })
    // 10 toward 3 of what is asked, 20 low of it; slope 0.1 across and 0.05 short up and down
    const near = (check: unknown, y: number, z: number, limit: number) => {
      const [a, b, c] = check as [number, number, number]
      expect([a, b, c].map((v) => Math.round(v * 1e9) / 1e9)).toEqual([y, z, limit])
    }
    near(cold?.[0], 10, -20, 100)
    near(cold?.[1], 0.1, -0.05, 1)
    // the factor of a state still counts
    near(hot?.[0], 10, -20, 200)
    near(hot?.[1], 0.1, -0.05, 2)
  })

  it('leaves growth along the train where it was', () => {
    const axial = { found: 200, want: 200, tolerance: 1 }
    const grows = { hot: [{ at: 0, rise: 250, axial: 300 }] }
    const used = { ...setting, use: true, why }
    const read = trainOf(
      pair({ left: { growth: grows }, coupling: { setting: used, axial }, rest: { states } }),
    )
    const hot = at(sharesOf(read, read.couplings.map(asFound)), 1)
    expect(hot.checks.find(({ what }) => what === 'gap')?.x).toBeCloseTo(-0.3, 12)
  })

  it('is planned to: the pump is raised to where the maker wants it', () => {
    const document = (coupling: Json) =>
      pair({
        left: { growth },
        right: { free: { side: false } },
        found: [given(0, 0)],
        coupling: { tolerance: { offset: 100 }, ...coupling },
        rest: { states: [{ id: 'hot', name: 'hot' }] },
      })
    const used = { offset: { z: 400 }, use: true, why }
    const offset = (coupling: Json) =>
      planOf(document(coupling)).couplings?.[0]?.checks.find(({ what }) => what === 'offset')?.z
    // to within 100 of 400, from below; without the setting to within 100 of 250; plans within 9e-7
    // of the least cost are equal, so the last digits are open
    const raised = planOf(document({ setting: used }))
    expect(raised.status).toBe('planned')
    expect(offset({ setting: used })).toBeCloseTo(-100, 2)
    const expected = raised.expected?.[0]
    expect(expected && 'offset' in expected ? expected.offset.z : NaN).toBeCloseTo(300, 2)
    const grown = planOf(document({})).expected?.[0]
    expect(grown && 'offset' in grown ? grown.offset.z : NaN).toBeCloseTo(150, 2)
  })
})

describe('what growth asks for beside it', () => {
  const says = (coupling: Json) => {
    const read = train(given(0, 0), coupling)
    const words = settingWords(read, at(read.couplings, 0))
    if (!words) throw new Error('no words')
    return words
  }

  it('is the cold line at which the state is exactly right, and the aim counts', () => {
    const read = train(given(0, 0), {
      setting: { offset: { y: 30, z: 200 }, slope: { y: 0.2 } },
      aim: { hot: { offset: { z: 20 } } },
    })
    const beside = settingBeside(read, at(read.couplings, 0))
    const hot = at(beside?.growthAsks, 1)
    // the motor rises 250 and goes 40 toward 3; 20 of it is wanted
    expect(hot.asks).toEqual({ y: 40, z: 270, sy: 0, sz: 0 })
    expect(hot.by).toEqual({ y: -10, z: -70, sy: 0.2, sz: 0 })
    // offset 70 of 200, angle 0.2 of 2
    expect(hot.share).toBeCloseTo(0.35, 12)
    expect(beside?.growthAsks.map(({ grown }) => grown)).toEqual([false, true])
    // a coupling that stands at the asked line uses nothing of its tolerance in that state
    const exact = train(given(40, 270), { aim: { hot: { offset: { z: 20 } } } })
    expect(at(sharesOf(exact, exact.couplings.map(asFound)), 1).share).toBeCloseTo(0, 12)
  })

  it('is said with sides, and so is which of the two is used', () => {
    expect(says({ setting: { offset: { y: -30, z: 200 }, from: 'drawing 7' } }).sentence).toBe(
      `Motor to Pump: the maker's cold setting (drawing 7) asks for the pump 200 µm high, 30 µm toward 9 o'clock, cold; for "hot" growth asks for the pump 250 µm high, 40 µm toward 3 o'clock, cold; the difference alone is 35 % of the tolerance there. The growth figures are used; the setting is not.`,
    )
    expect(says({ setting: { offset: { z: 200 }, use: true, why } }).sentence).toContain(
      'The setting is used (measured on the test stand): growth and aims are not applied at this coupling, in any state.',
    )
  })

  it('differs where the digits that people read differ', () => {
    expect(says({ setting: { offset: { y: 40, z: 250 } } }).differ).toBe(false)
    expect(says({ setting: { offset: { y: 40.3, z: 250 }, slope: { z: 0.004 } } }).differ).toBe(
      false,
    )
    expect(says({ setting: { offset: { y: 42, z: 250 } } }).differ).toBe(true)
    expect(says({ setting: { offset: { y: 40, z: 250 }, slope: { z: -0.01 } } }).differ).toBe(true)
  })

  it('is told among the findings, and what the setting lacks among what was not entered', () => {
    const answer = planOf(
      pair({
        coupling: { setting: { offset: { z: 20 }, use: true, why } },
        rest: { states },
      }),
    )
    expect(answer.findings.map(({ where }) => where)).toEqual(['couplings[0].setting'])
    expect(answer.notEntered).toContainEqual({
      where: 'couplings[0].setting',
      what: 'offset sideways, slope sideways, slope up and down of the cold setting at Motor to Pump',
      instead: 'taken as 0',
    })
    // no growth is missed where none is used, until a gap is checked
    expect(answer.notEntered.filter(({ what }) => what.startsWith('growth'))).toEqual([])
    const withGap = planOf(
      pair({
        coupling: {
          setting: { offset: { z: 20 }, use: true, why },
          axial: { found: 200, want: 200, tolerance: 1 },
        },
        rest: { states },
      }),
    )
    expect(withGap.notEntered.filter(({ what }) => what.startsWith('growth'))).toHaveLength(2)
  })
})
