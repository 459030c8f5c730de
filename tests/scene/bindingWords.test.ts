import { describe, expect, it } from 'vitest'
import type { BindingAnswer } from '../../src/engine/plan/answer'
import { bindingJson } from '../../src/json/planJson'
import { bindingSentence, savesAtMost, stepOf } from '../../src/text/bindingWords'
import { draw, drawExample, exampleFiles, pair } from './trains'

const hole: BindingAnswer = {
  limit: { kind: 'foot', limit: 'hole', body: 'b', foot: '2 far', toward: 'nine' },
  price: 2.3,
  quantity: 'fine',
  upTo: 400,
}

describe('what a limit that binds is worth', () => {
  it('is told for a step people think in, with its side and how far it holds', async () => {
    const { train } = await draw(pair({}, { right: { name: 'Pump' } }))
    expect(bindingSentence(train, hole)).toBe(
      'each 10 µm more room toward the yard at foot 2 far of the pump saves 23 µm of moves, up to 400 µm',
    )
    expect(
      bindingSentence(train, {
        ...hole,
        limit: { kind: 'foot', limit: 'minimum pack', body: 'b', foot: '2 far', toward: 'down' },
        upTo: null,
      }),
    ).toBe(
      'each 10 µm less pack allowed under foot 2 far of the pump saves 23 µm of moves, without end',
    )
  })

  it('is told in whole where the price ends before a tenth of the step', async () => {
    const { train } = await draw(pair({}))
    const [coupling] = train.couplings
    const [state] = train.states
    const tolerance: BindingAnswer = {
      limit: {
        kind: 'check',
        coupling: coupling?.id ?? '',
        state: state?.id ?? '',
        what: 'left plane',
        way: 'y',
      },
      price: 1500,
      quantity: 'slope',
      upTo: 0.006,
    }
    expect(bindingSentence(train, tolerance)).toBe(
      `the next 0.006 mrad more tolerance sideways at the left plane of ${coupling?.name ?? ''} in ${state?.name ?? ''} saves 9 µm of moves, further room less`,
    )
    expect(savesAtMost(tolerance)).toBeCloseTo(9, 9)
    expect(savesAtMost({ ...tolerance, upTo: null })).toBe(Infinity)
  })

  it('takes steps that the price holds for, by unit', () => {
    expect(stepOf('mm', 0.4)).toBe(0.1)
    expect(stepOf('mm', 0.05)).toBeCloseTo(0.01, 12)
    expect(stepOf('mm', 0.005)).toBeUndefined()
    expect(stepOf('mil', null)).toBe(1)
    expect(stepOf('µm', 12)).toBe(10)
  })

  it.each(exampleFiles)('%s: every limit has its own sentence, with both units', async (file) => {
    const { train, answer } = await drawExample(file)
    const prices = (answer.status === 'planned' && answer.prices) || []
    const sentences = prices.map((limit) => bindingSentence(train, limit))
    const bindings = bindingJson(train, prices)
    expect(sentences.length > 0).toBe(answer.status === 'planned')
    expect(new Set(sentences).size).toBe(sentences.length)
    for (const [i, sentence] of sentences.entries()) {
      expect(sentence).toMatch(/^(each|the next) [0-9.]+ \S+ .* saves [0-9.]+ (µm|mm|mil) of /)
      expect(sentence).toContain(` ${bindings[i]?.unit ?? '?'} `)
      expect(sentence).not.toMatch(/undefined|NaN|e-\d| {2}/)
    }
  })
})
