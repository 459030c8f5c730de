import { describe, expect, test } from 'vitest'
import type { PlanAnswer } from '../../src/engine/fieldwork/answer'
import { sentenceOf, sentenceText } from '../../src/engine/plan/sentence'
import { mustPlan } from '../planned'
import { planText } from '../../src/text/planText'
import { bodiesInWords, inSentence, listed } from '../../src/language/names'
import { askTooMuch, example, planned, reverseDial, trainOf } from './trains'

describe('the sentence', () => {
  test('of a plan: hold, shim, slide, tightest coupling, proof', async () => {
    const { train, answer: made } = await planned(example('bolt-bound-gearbox'))
    const answer = mustPlan(made)
    const { headline, moves, proof } = sentenceOf(train, answer)
    expect(headline).toBe('Leave the low-stage compressor fixed.')
    const shimmed = answer.feet.filter(({ shim }) => Math.round(shim) !== 0)
    const machines = new Set(shimmed.map(({ body }) => body)).size
    expect(moves).toContain(
      `Shim ${shimmed.length} feet of ${machines} machines, ${Math.round(answer.total.shim)} µm in all; slide 3 machines, ${Math.round(answer.total.side)} µm over 5 rows of feet.`,
    )
    expect(moves).toMatch(/The tightest coupling then uses 70 % of its tolerance \(.+, .+\)\.$/)
    expect(proof).toBe(
      `With the low-stage compressor fixed, no plan for these numbers needs less than ${Math.floor(answer.proof.bound)} µm. Before rounding to shims.`,
    )
  })

  test('of a train that stands well', async () => {
    const { train, answer } = await planned(example('leave-it-alone'))
    expect(sentenceOf(train, answer)).toEqual({
      headline: 'Nothing needs to move.',
      moves:
        'As it stands, the tightest coupling uses 61 % of its tolerance (main pump to gear, cold start); 70 % was asked for.',
      proof: '',
    })
  })

  test('of an impossible one: the hold, what is reached at best, what was asked', async () => {
    const { train, answer } = await planned(example('piped-compressor', askTooMuch))
    const { headline, proof } = sentenceOf(train, answer)
    expect(headline).toBe(
      `With the air compressor fixed, the best reachable is ${Math.ceil((answer.floor ?? 0) * 100)} % of tolerance; 5 % was asked for.`,
    )
    expect(proof).toBe('')
  })

  test('shares that would read the same get more decimals', async () => {
    const { train, answer } = await planned(example('piped-compressor', askTooMuch))
    if (answer.status !== 'impossible') throw new Error(answer.status)
    const near: PlanAnswer = { ...answer, floor: 0.7003, share: 0.7 }
    expect(sentenceOf(train, near).headline).toContain(
      '70.03 % of tolerance; 70.00 % was asked for',
    )
  })

  test('the best that can be reached reads alike everywhere, and can be had as it is told', async () => {
    const { train, answer } = await planned(example('piped-compressor', askTooMuch))
    const text = planText(train, answer).replaceAll(/\s+/g, ' ')
    const told = [...text.matchAll(/(?:reachable|best)[^%;]*? (\d+) %/g)]
    expect(told.length).toBeGreaterThan(1)
    const [share = 0] = new Set(told.map(([, percent]) => Number(percent)))
    expect(new Set(told.map(([, percent]) => percent))).toEqual(new Set([String(share)]))
    const again = await planned(
      example('piped-compressor', (document) => {
        document.plan = { ...document.plan, share: share / 100 }
      }),
    )
    expect(again.answer.status).toBe('planned')
  })

  test('weights make a cost and not a length', async () => {
    const { train, answer } = await planned({
      ...reverseDial,
      plan: { weights: { shim: 2 } },
    })
    expect(sentenceOf(train, answer).proof).toContain(
      'no plan for these numbers costs less than 155.9 mil, weighted as entered.',
    )
  })

  test('a plan that is not shown says so', async () => {
    const { train, answer } = await planned(reverseDial)
    const { proof } = mustPlan(answer)
    const { name, share, held, asFound, standingShare, floor, findings, notEntered } = answer
    const known = { name, share, held, asFound, standingShare, floor, findings, notEntered }
    for (const ended of [{ status: 'stopped' }, { status: 'unproven', proof }] as const) {
      const text = sentenceText(sentenceOf(train, { ...known, ...ended, why: 'too slow' }))
      expect(text).toMatch(/no plan is shown\. Too slow\.$/)
      expect(text).not.toMatch(/shim|slide|\d/)
    }
  })
})

describe('names in a sentence', () => {
  test.each([
    ['Low-stage compressor', 'the low-stage compressor'],
    ['LP compressor', 'the LP compressor'],
    ['Motor', 'the motor'],
    ['Bertha', 'the Bertha'],
    ['K-101', 'K-101'],
    ['The old pump', 'the old pump'],
    ['Feed Pump', 'the Feed Pump'],
    ['C', 'the C'],
  ])('%s: %s', (name, said) => {
    expect(inSentence(name)).toBe(said)
  })

  test('lists and counts', () => {
    expect(listed(['a', 'b', 'c'])).toBe('a, b and c')
    const { bodies } = trainOf(example('skid-as-one'))
    expect(bodiesInWords(bodies)).toBe('4 machines and the bedplate')
    expect(bodiesInWords(bodies.slice(0, 1))).toBe('the power turbine')
  })
})
