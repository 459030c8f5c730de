import { describe, expect, it } from 'vitest'
import type { RemedyJson } from '../../src/json/reasonsJson'
import { catalogue } from '../../src/engine/infeasible/remedies/catalogue'
import { applyRemedy, changed } from '../../src/engine/infeasible/remedies/change'
import { planOf, readOf, reasonsOf } from './bench'
import { given, twoMachines } from '../second/pairs'
import { large, small } from './trains'

/** The same remedy with one of its numbers a step nearer to what it was; undefined where none is a step. */
const stepOf: Record<string, number> = {
  shank: 200,
  'open hole': 200,
  'machine feet': 100,
  'minimum pack': 50,
  restraint: 100,
  tilt: 0.05,
  'state tolerance': 0.01,
}

function aStepLess(remedy: RemedyJson): RemedyJson['change'][] {
  const step = stepOf[remedy.kind]
  if (step === undefined) return []
  return remedy.change.flatMap(({ at, from, to }, i) => {
    if (typeof to !== 'number') return []
    const was = typeof from === 'number' ? from : 1
    const less = Math.abs(to - was) <= step * 1.001 ? was : to - Math.sign(to - was) * step
    return [remedy.change.map((change, k) => (k === i ? { at, from, to: less } : change))]
  })
}

const all = [...small, ...large]

describe.each(all)('$name', ({ kind, document }) => {
  const answer = reasonsOf(document)
  const working = answer.remedies.filter(({ solves }) => solves)

  it(`is put right by: ${kind}`, () => {
    expect(working.map((remedy) => remedy.kind)).toContain(kind)
  })

  it('needs every step that it asks for', () => {
    for (const remedy of working)
      for (const change of aStepLess(remedy)) {
        const less = planOf(changed(answer.document, change))
        expect(less.status, `${remedy.sentence} ${JSON.stringify(change)}`).toBe('impossible')
      }
  })

  it('says who must agree, how long it takes, what it risks, and what it amounts to', () => {
    for (const { kind: kinds, effort, hours, agree, risk, sentence, amount } of working) {
      const parts = kinds.split(' + ') as (keyof typeof catalogue)[]
      expect(effort).toBe(parts.reduce((sum, part) => sum + catalogue[part].effort, 0))
      expect(hours[0]).toBeLessThanOrEqual(hours[1])
      expect(agree.length).toBeGreaterThan(10)
      expect(risk.length).toBeGreaterThan(10)
      for (const { value, unit } of amount) {
        expect(value).toBeGreaterThan(0)
        expect(unit).not.toBe('')
        if (!kinds.includes('tolerance')) expect(sentence).toContain(unit)
      }
      if (kinds.includes('tolerance')) {
        expect(sentence).toMatch(/\d.* instead of \d/)
        expect(agree).toMatch(/the maker of the coupling .*; the owner, in writing/)
      }
    }
  })

  it('is ranked: what works first, by effort; nothing machined before holds were tried', () => {
    const order = answer.remedies.map(({ solves, effort }) => (solves ? 0 : 100) + effort)
    expect(order).toEqual([...order].sort((a, b) => a - b))
    const cuts = answer.remedies.filter((remedy) => /open hole|machine feet/.test(remedy.kind))
    for (const { sentence } of cuts)
      expect(sentence).toMatch(
        /Other choices of fixed machines were tried first|No other choice of fixed/,
      )
  })

  it('says of a tolerance that is not enough what twice of it reaches, planned from the changed file', () => {
    for (const { kind: of, solves, floor, where } of answer.remedies) {
      if (solves || floor === null) continue
      const { document: now } = answer
      const twice = (value: number | undefined) => value !== undefined && value * 2
      if (of === 'coupling tolerance') {
        const couplings = now.couplings.map((coupling) =>
          coupling.name === where ||
          readOf(now).train.couplings.some((c) => c.id === coupling.id && c.name === where)
            ? {
                ...coupling,
                tolerance: Object.fromEntries(
                  Object.entries(coupling.tolerance).map(([key, value]) => [
                    key,
                    typeof value === 'number' ? twice(value) : value,
                  ]),
                ),
                ...(coupling.axial && {
                  axial: { ...coupling.axial, tolerance: coupling.axial.tolerance * 2 },
                }),
              }
            : coupling,
        )
        expect(planOf({ ...now, couplings }).floor).toBeCloseTo(floor, 2)
      }
      if (of === 'state tolerance' && now.states?.length) {
        const states = now.states.map((state) =>
          state.name === where ? { ...state, tolerance: (state.tolerance ?? 1) * 2 } : state,
        )
        expect(planOf({ ...now, states }).floor).toBeCloseTo(floor, 6)
      }
    }
  })

  it('does not touch the document it was asked about', () => {
    const before = JSON.stringify(answer.document)
    for (const remedy of working) {
      applyRemedy(answer.document, remedy)
      for (const { from, to } of remedy.change)
        expect(JSON.stringify(from)).not.toBe(JSON.stringify(to))
    }
    expect(JSON.stringify(answer.document)).toBe(before)
  })
})

it('every kind of remedy solves one of these trains', () => {
  const kinds = new Set(all.map(({ kind }) => kind))
  for (const kind of Object.keys(catalogue)) expect([...kinds], kind).toContain(kind)
})

describe('amounts worked by hand', () => {
  const remedy = (name: string, kind: string) => {
    const train = small.find((one) => one.name === name)
    const found = reasonsOf(train?.document).remedies.find((one) => one.kind === kind)
    if (!found) throw new Error(`no remedy ${kind} for ${name}`)
    return found
  }
  const values = ({ amount }: RemedyJson) => amount.map(({ value }) => value)

  it('hot and cold lie 100 um apart and may be off by 40 each: one of them by 60, half as much again', () => {
    expect(values(remedy('two states that want 100 um between them', 'state tolerance'))).toEqual([
      1.5,
    ])
  })

  it('and both of them by 50, a quarter more', () => {
    const { change } = remedy('two states that want 100 um between them', 'coupling tolerance')
    expect(change[0]).toEqual({ at: 'couplings[0].tolerance.offset', from: 40, to: 50 })
  })

  it('a share of 60 um that should reach 50: 0.84 in whole percent', () => {
    const { change } = remedy(
      'two states that want 100 um between them, and 0.6 of the tolerance',
      'share',
    )
    expect(change).toEqual([{ at: 'plan.share', from: 0.6, to: 0.84 }])
  })

  // 1.9 n - 0.9 f must come within 10 of 300, and n - f within 50: n 245, f 195
  it('300 um to slide with 120 of room lack 125 and 75: 200 and 100 in whole tenths of a mm', () => {
    const found = values(remedy('bolts with 120 um each way, and 300 um to slide', 'shank'))
    expect(found).toEqual([200, 200, 100, 100])
  })

  it('300 um to go down with nothing left take 250 and 200 in steps of 50', () => {
    const found = values(
      remedy('packs at a minimum of 1000 um, and 300 um to go down', 'minimum pack'),
    )
    expect(found).toEqual([250, 250, 200, 200])
  })
})

describe('a tolerance of a state together with that of its coupling', () => {
  // two states that want 230 um between them, and neither tolerance alone may be widened so far
  const document = {
    ...twoMachines(
      { offset: 60 },
      [given(0, 0)],
      { growth: { hot: [{ at: 0, rise: 230 }] } },
      {
        states: [
          { id: 'cold', name: 'cold start', tolerance: 0.5 },
          { id: 'hot', name: 'hot' },
        ],
      },
    ),
    sides: { three: 'toward the river', nine: 'toward the road' },
  }
  const pairs = reasonsOf(document).remedies.filter(
    ({ solves, kind }) => solves && kind.includes(' + ') && kind.includes('coupling tolerance'),
  )

  it('tells what both come to together in every state, as the changed file has it', () => {
    expect(pairs.length).toBeGreaterThan(0)
    for (const { change, sentence } of pairs) {
      const { train } = readOf(changed(document, change))
      const { offset = NaN } = train.couplings[0]?.tolerance ?? {}
      for (const { name, factor } of train.states) {
        const now = name === 'hot' ? 60 : 30
        const told = new RegExp(
          `([\\d.]+) µm of offset instead of ${now} µm of offset in ${name}`,
        ).exec(sentence)
        // never less than the changed file allows, in three digits
        const part = Number(told?.[1]) / (offset * factor)
        expect(part, sentence).toBeGreaterThanOrEqual(1 - 1e-9)
        expect(part, sentence).toBeLessThan(1.01)
      }
    }
  })
})
