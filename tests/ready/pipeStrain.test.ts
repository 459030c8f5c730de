import { describe, expect, it } from 'vitest'
import { mayBePiped, strainCheck } from '../../src/engine/fieldwork/ready/pipeStrain'
import { strainAnswer, strainItem } from '../../src/engine/fieldwork/ready/strainWords'
import { readTrain } from '../../src/document/readTrain'
import { at, pair, trainOf, type Json } from '../engine/pair'

const read = (strain: unknown, rest: Json = {}) => {
  const result = readTrain(pair({ coupling: { strain }, rest }))
  if (!result.ok) throw new Error(JSON.stringify(result.refused))
  const { train, document } = result
  const check = strainCheck(train, at(document.couplings, 0))
  return { train, check, item: strainItem(train, at(train.couplings, 0), check) }
}

const flange = (name: string, y?: number, z?: number) => ({
  name,
  ...(y !== undefined && { y }),
  ...(z !== undefined && { z }),
})

describe('pipe strain', () => {
  it('is within up to 0.05 mm each way, by API RP 686, and past it beyond', () => {
    const one = (y: number, z: number) => read({ flanges: [flange('suction', y, z)] }).check.verdict
    expect([one(50, -50), one(51, 0), one(0, -51)]).toEqual(['within', 'passed', 'passed'])
    const { check } = read(
      { flanges: [flange('suction', 0, 2)] },
      { units: { length: 'in', fine: 'mil' } },
    )
    expect(check).toMatchObject({ verdict: 'within', limit: { value: 50.8 } })
    expect(check.limit.source).toMatch(/API RP 686, chapter 6 \(secondary\)/)
  })

  it('counts y and z apart, since the limit is for each: 45 and 45 are within', () => {
    expect(read({ flanges: [flange('suction', 45, 45)] }).check.verdict).toBe('within')
  })

  it('adds flanges up: two of 30 the same way are past it, two against each other are not', () => {
    const two = (z: number) =>
      read({ flanges: [flange('suction', 0, 30), flange('discharge', 0, z)] })
    expect(two(30).check).toMatchObject({ verdict: 'passed', total: { y: 0, z: 60 } })
    expect(two(30).item).toMatchObject({ state: 'bad' })
    expect(two(30).item.words).toContain('all flanges together carry the shaft 60 µm up')
    expect(two(-30).check.verdict).toBe('within')
  })

  it('names the flange, the way and the side', () => {
    const { train, check, item } = read({
      flanges: [flange('suction', -20, 10), flange('discharge', 70, -90)],
    })
    expect(strainAnswer(train, check).flanges.map(({ words }) => words)).toEqual([
      "suction carries the shaft 10 µm up and 20 µm toward 9 o'clock",
      "discharge carries the shaft 90 µm down and 70 µm toward 3 o'clock, more than is allowed: the pipe is put right, not the machine",
    ])
    expect(item.words).toMatch(
      /^pipe strain at Motor to Pump: discharge carries .*50 µm is allowed/,
    )
  })

  it('takes a limit of its own with its basis', () => {
    const own = { limit: 76.2, basis: 'vol. 3, p. 173', flanges: [flange('suction', 70, 0)] }
    expect(read(own).check).toMatchObject({
      verdict: 'within',
      limit: { value: 76.2, source: 'vol. 3, p. 173' },
    })
    expect(read({ ...own, limit: 60 }).check.verdict).toBe('passed')
  })

  it('is missing where nothing, half or nonsense was entered, but past the limit all the same', () => {
    const state = (strain: unknown) => read(strain).item.state
    expect(state(undefined)).toBe('missing')
    expect(state({ flanges: [] })).toBe('missing')
    expect(state({ flange: 'suction' })).toBe('missing')
    expect(state({ flanges: [flange('suction', 10)] })).toBe('missing')
    expect(read({ flanges: [flange('suction', 10)] }).item.words).toContain(
      'not measured up and down',
    )
    expect(state({ flanges: [flange('suction', 100)] })).toBe('bad')
  })

  it('is asked for where a machine may be piped', () => {
    const asked = (left: string, right: string, more: Json = {}) => {
      const train = trainOf(pair({ left: { role: left }, right: { role: right, ...more } }))
      return mayBePiped(train, at(train.couplings, 0))
    }
    expect(asked('motor', 'pump')).toBe(true)
    expect(asked('motor', 'other')).toBe(true)
    expect(asked('motor', 'gearbox')).toBe(false)
    expect(
      asked('motor', 'gearbox', { restraints: [{ id: 'oil', x: 1000, z: 100, rise: [-1, 1] }] }),
    ).toBe(true)
  })
})
