import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { planTrain } from '../planned'
import { published } from '../../src/engine/plan/publishedLimit'
import type { ReadyAnswer } from '../../src/engine/fieldwork/ready/answer'
import { planText } from '../../src/text/planText'
import {
  answerOf,
  at,
  fourFeet,
  given,
  pair,
  planOf,
  solver,
  trainOf,
  type Json,
} from '../engine/pair'

const even = fourFeet.map((foot) => ({ ...foot, soft: 10 }))
const strain = { flanges: [{ name: 'suction', y: 10, z: -20 }] }
const says =
  'At the left plane the pump is 30 µm HIGHER than the motor, and in line with it sideways; at the right plane the pump is 30 µm HIGHER than the motor, and in line with it sideways.'

/** Everything in: feet, strain, the words confirmed; a line has no closure. */
const inOrder = (more: { right?: Json; coupling?: Json; record?: Json; z?: number } = {}) =>
  pair({
    right: { feet: even, ...more.right },
    found: [given(0, more.z ?? 30)],
    coupling: { strain, ...more.coupling },
    rest: { record: { signs: [{ coupling: 'c', says, by: 'N. Ferrer' }], ...more.record } },
  })

const readyOf = (document: unknown): ReadyAnswer => {
  const { ready } = planOf(document)
  if (!ready) throw new Error('nothing about readiness')
  return ready
}
const states = (document: unknown) =>
  Object.fromEntries(
    readyOf(document).items.map(({ what, where, state }) => [`${what} ${where}`, state]),
  )

describe('a plan is ready', () => {
  it('when soft foot, pipe strain, signs and closures are in', () => {
    const ready = readyOf(inOrder())
    expect(ready).toMatchObject({ ready: true, provisional: false, provisionalSentence: '' })
    expect(ready.sentence).toBe('Ready: soft foot, pipe strain, signs and dial sum checks are in.')
    expect(states(inOrder())).toEqual({
      'soft foot B': 'in',
      'pipe strain c': 'in',
      'signs c': 'in',
    })
  })

  it('not while one of them is missing or bad, and says which', () => {
    const without = (document: unknown, sentence: string) => {
      const ready = readyOf(document)
      expect(ready.ready).toBe(false)
      expect(ready.sentence).toBe(sentence)
    }
    without(inOrder({ right: { feet: fourFeet } }), 'Not ready: soft foot not measured (the pump).')
    without(
      inOrder({ coupling: { strain: undefined } }),
      'Not ready: pipe strain not measured (Motor to Pump).',
    )
    without(
      inOrder({ coupling: { strain: { flanges: [{ name: 'suction', y: 90, z: 0 }] } } }),
      'Not ready: pipe strain past its limit (Motor to Pump).',
    )
    without(
      inOrder({ record: { signs: [] } }),
      'Not ready: signs of the readings not confirmed (Motor to Pump).',
    )
  })

  it('or when what is missing or bad is waived with a name and a reason', () => {
    const waived = (waiver: Json) =>
      readyOf(inOrder({ right: { feet: fourFeet }, record: { waivers: [waiver] } }))
    const waiver = { what: 'soft foot', by: 'N. Ferrer', why: 'grouted sole plates, read in May' }
    const ready = waived(waiver)
    expect(ready.ready).toBe(true)
    expect(ready.sentence).toBe(
      'Ready: soft foot, pipe strain, signs and dial sum checks are in or accepted without. Soft foot of the pump is accepted without, by N. Ferrer: grouted sole plates, read in May.',
    )
    expect(waived({ ...waiver, where: 'B' }).ready).toBe(true)
    for (const other of [
      { ...waiver, where: 'A' },
      { ...waiver, what: 'closure' },
      { ...waiver, by: ' ' },
      { ...waiver, why: '' },
    ])
      expect(waived(other).ready, JSON.stringify(other)).toBe(false)
  })

  it('while the confirmed words are those of the readings: other readings ask again', () => {
    expect(states(inOrder({ z: 30.2 }))['signs c']).toBe('in')
    const changed = readyOf(inOrder({ z: -30 }))
    expect(changed.ready).toBe(false)
    expect(at(changed.signs, 0)).toMatchObject({ confirmed: false, before: says })
    expect(changed.items.find(({ what }) => what === 'signs')?.words).toContain(
      'Confirmed before was',
    )
    expect(at(readyOf(inOrder()).signs, 0)).toMatchObject({ confirmed: true, by: 'N. Ferrer' })
  })

  it('with a full sweep that closes, not with one that does not', () => {
    const found = (off: number) => {
      const rim = (x: number) => ({
        kind: 'rim',
        rides: 'right',
        at: x,
        readings: [
          [12, 0],
          [3, -30],
          [6, -60 + off],
          [9, -30],
        ],
      })
      return { found: [rim(0), rim(200)] }
    }
    expect(states(inOrder({ coupling: found(0) }))['closure c']).toBe('in')
    expect(states(inOrder({ coupling: found(60) }))['closure c']).toBe('bad')
  })

  it('whatever else stands in the record', () => {
    expect(states(inOrder({ record: { signs: 'yes' } }))['signs c']).toBe('missing')
  })
})

describe('soft foot makes everything after it provisional', () => {
  const feet = fourFeet.map((foot, i) => ({ ...foot, soft: i === 0 || i === 3 ? 200 : 0 }))
  const document = inOrder({ right: { feet } })

  it('and is a step of its own with shims, what they move, and a stop point', () => {
    const ready = readyOf(document)
    expect(ready).toMatchObject({ ready: false, provisional: true })
    expect(ready.provisionalSentence).toBe(
      'Every figure of this plan is provisional: making the feet of the pump plane moves its shaft. Do that first, then read the couplings anew.',
    )
    const step = at(ready.softFoot, 0)
    expect(step.total).toBeCloseTo(200, 6)
    expect(step.words[0]).toBe(
      'Pump: put in 200 µm under foot 1000a; 200 µm in all is the least that makes its feet plane.',
    )
    expect(step.hold).toMatch(
      /^Stop point: loosen each bolt of the pump again.*read Motor to Pump anew/,
    )
    // 50 and 0.1 mrad over 1400 mm up at mid-span; 0.1667 mrad of roll swings the axis 67 toward 9
    const move = at(step.moves, 0)
    expect(move.offset.z).toBeCloseTo(190, 6)
    expect(move.offset.y).toBeCloseTo(-66.6667, 3)
    expect(move.slope.z).toBeCloseTo(-0.1, 9)
    expect(move.words).toBe(
      "the pump against the motor, at mid-span of Motor to Pump: 190 µm up, 67 µm toward 9 o'clock, 0.10 mrad more falling to the right",
    )
  })

  it('says under which foot the gap opens, and where to', () => {
    const angled = feet.map((foot, i) => (i === 0 ? { ...foot, gaps: [160, 200, 200, 240] } : foot))
    const step = at(readyOf(inOrder({ right: { feet: angled } })).softFoot, 0)
    expect(step.feet.map(({ words }) => words)[0]).toBe(
      "Pump foot 1000a rises 240 µm (50 µm is allowed); angled: the gap opens by 40 µm toward its right end and 40 µm toward 9 o'clock; what lies under it is tapered or stepped by as much, thick side there, or the foot is machined; the bolt must not pull it down",
    )
    expect(step.feet[3]).toMatchObject({ rise: 200, kinds: [] })
  })

  it('on six feet of which one shows a gap promises no least: other shapes show the same', () => {
    const [left, , , last] = fourFeet
    const middle = fourFeet
      .slice(0, 2)
      .map((foot, i) => ({ ...foot, id: `middle ${i}`, x: ((left?.x ?? 0) + (last?.x ?? 0)) / 2 }))
    const six = [...fourFeet, ...middle].map((foot) => ({
      ...foot,
      soft: foot.id === 'middle 0' ? 200 : 0,
    }))
    const { words } = at(readyOf(inOrder({ right: { feet: six } })).softFoot, 0)
    expect(words.join(' ')).toContain('On 6 feet these gaps alone leave the shape open')
    expect(words.join(' ')).not.toContain('is the least')
  })

  it('is said on the sheet of text, in 80 columns', () => {
    const text = planText(trainOf(document), answerOf(document))
    const plain = text.replace(/\s+/g, ' ')
    expect(plain).toContain(
      'Not ready: soft foot to be taken away (the pump). Every figure of this plan is provisional',
    )
    expect(plain).toContain('BEFORE MOVING')
    expect(plain).toContain('Stop point: loosen each bolt of the pump')
    for (const row of text.split('\n')) expect(row.length).toBeLessThanOrEqual(80)
  })

  /** Off by 180 um, so that there is something to move. */
  const planned = (more: { right?: Json; record?: Json }) => inOrder({ ...more, z: 180 })
  const waivers = [{ what: 'soft foot', by: 'N. Ferrer', why: 'the foundation is renewed in May' }]
  const kinds = (file: Json) =>
    planOf(file).steps?.steps.map(({ kind, provisional }) => [kind, provisional])

  it('every step after the soft-foot step, and every part of the text with figures', () => {
    const file = planned({ right: { feet } })
    expect(kinds(file)).toEqual([
      ['soft foot', false],
      ['vertical', true],
      ['read', true],
    ])
    const text = planText(trainOf(file), answerOf(file)).split('\n')
    const mark = 'PROVISIONAL until the soft feet are plane and the couplings read anew'
    const parts = text.flatMap((row, i) => (row === mark ? [text[i + 1]?.split(/[:,]/)[0]] : []))
    expect(parts).toEqual(['FEET', 'COUPLINGS', 'WHAT BINDS', 'EXPECTED READINGS', 'ORDER OF WORK'])
  })

  it('where no shim takes it away too: all feet rise alike, something springs', () => {
    const springing = fourFeet.map((foot) => ({ ...foot, soft: 120 }))
    const file = planned({ right: { feet: springing } })
    expect(readyOf(file)).toMatchObject({ ready: false, provisional: true })
    expect(kinds(file)).toEqual([
      ['vertical', true],
      ['read', true],
    ])
  })

  it('until it is waived or taken away', () => {
    const waived = planned({ right: { feet }, record: { waivers } })
    expect(readyOf(inOrder({ right: { feet }, record: { waivers } }))).toMatchObject({
      ready: true,
      provisional: false,
    })
    expect(readyOf(inOrder())).toMatchObject({ provisional: false })
    // who goes without the soft-foot work is not told to do it
    expect(kinds(waived)).toEqual([
      ['vertical', false],
      ['read', false],
    ])
    expect(planText(trainOf(waived), answerOf(waived))).not.toContain('PROVISIONAL')
  })
})

describe('the examples', () => {
  it.each(['piped-compressor', 'leave-it-alone', 'base-bound-motor', 'skid-as-one'])(
    '%s says what it lacks, in any state of its plan, the same each time',
    (name) => {
      const text = readFileSync(new URL(`../../examples/${name}.json`, import.meta.url), 'utf8')
      const [first, again] = [0, 1].map(() => {
        const answer = planTrain(JSON.parse(text), solver, { reasons: false, prices: false })
        if ('refused' in answer) throw new Error('refused')
        return answer.ready
      })
      expect(first?.ready).toBe(false)
      expect(first?.sentence).toMatch(/^Not ready: soft foot not measured/)
      expect(JSON.stringify(again)).toBe(JSON.stringify(first))
    },
  )
})

it('the published limits are those of the catalogue', () => {
  interface Row {
    what: string
    most?: number
    unit: string
    source: string
    certainty: string
  }
  const catalogue = JSON.parse(readFileSync('shared/catalogues/limits.json', 'utf8')) as Record<
    string,
    Row[]
  >
  const um = { mm: 1000, mil: 25.4 }
  const held = (list: string, value: number, source: string) =>
    catalogue[list]?.find(
      (row) =>
        source.startsWith(row.source) &&
        Math.abs((row.most ?? NaN) * um[row.unit as 'mm' | 'mil'] - value) < 1e-9,
    )
  const { softFoot, pipeStrain, closure } = published
  expect(held('softFoot', 50, softFoot.metric.source)?.certainty).toBe(softFoot.metric.certainty)
  expect(held('softFoot', 50.8, softFoot.inch.source)?.certainty).toBe(softFoot.inch.certainty)
  expect(held('pipeStrain', 50, pipeStrain.metric.source)?.certainty).toBe(
    pipeStrain.metric.certainty,
  )
  // the source prints 0.05 mm (0.002 in) side by side
  expect(pipeStrain.inch).toMatchObject({ value: 2 * 25.4, source: pipeStrain.metric.source })
  expect(held('closure', closure.metric.value, closure.metric.source)).toBeDefined()
})
