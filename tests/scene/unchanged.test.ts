import { expect, test } from 'vitest'
import { memoized } from '../../src/app/shelf/kept'
import { couplingsScene } from '../../src/scene/couplingCards'
import { feetScene } from '../../src/scene/footCards'
import { chartBand, trainScene } from '../../src/scene/sheet'
import { unchanged } from '../../src/scene/unchanged'
import { drawExample } from './trains'

test('parts that are equal stay the same objects, and nothing else does', () => {
  const before = { a: [{ x: 1 }, { x: 2 }], b: { c: 'text', d: undefined }, e: [1, 2] }
  expect(unchanged(before, structuredClone(before))).toBe(before)
  const next = { a: [{ x: 1 }, { x: 3 }, { x: 4 }], b: { c: 'text', d: undefined }, e: [2, 1] }
  const shared = unchanged(before, next)
  expect(shared).toEqual(next)
  expect(shared.a[0]).toBe(before.a[0])
  expect(shared.a[1]).not.toBe(before.a[1])
  expect(shared.b).toBe(before.b)
  expect(shared.e).toEqual([2, 1])
})

test('a field more or less, a list for an object, and nothing at all are seen', () => {
  expect(unchanged({ a: 1, b: 2 }, { a: 1 })).toEqual({ a: 1 })
  expect(unchanged({ a: 1 }, { a: 1, b: undefined })).toHaveProperty('b')
  expect(unchanged({ a: 1 }, { b: undefined })).toEqual({ b: undefined })
  expect(unchanged([1], { 0: 1 })).toEqual({ 0: 1 })
  expect(unchanged({ 0: 1 }, [1])).toEqual([1])
  expect(unchanged([1, 2], [1])).toEqual([1])
  expect(unchanged(undefined, [1])).toEqual([1])
  const nothing: unknown = undefined
  expect(unchanged([1], nothing)).toBeUndefined()
  expect(unchanged({ a: null }, { a: {} })).toEqual({ a: {} })
})

test('maps are compared by what they hold', () => {
  const before = { grown: new Map([['hot', [{ at: 1 }]]]), aim: new Map<string, number>() }
  expect(unchanged(before, structuredClone(before))).toBe(before)
  const next = { grown: new Map([['hot', [{ at: 2 }]]]), aim: new Map([['hot', 1]]) }
  expect(unchanged(before, next)).toEqual(next)
  expect(unchanged(new Map([['hot', 1]]), new Map())).toEqual(new Map())
  expect(unchanged(new Map(), {})).toEqual({})
  expect(unchanged({}, new Map())).toEqual(new Map())
})

test('bands drawn again of the same plan over the same train are the same bands', async () => {
  const { train, answer, figures } = await drawExample('five-in-a-line.json')
  const { scale, above } = trainScene(train, 1008)
  const bands = () => ({
    rise: chartBand(train, figures, scale, { way: 'rise' }),
    side: chartBand(train, figures, scale, { way: 'side' }),
    feet: feetScene(train, answer, scale, above),
    couplings: couplingsScene(train, answer, figures, scale),
  })
  const first = bands()
  expect(unchanged(first, bands())).toBe(first)
})

test('kept work is done once for each thing', () => {
  let times = 0
  const count = memoized((thing: { n: number }) => {
    times++
    return thing.n > 1 ? thing.n : undefined
  })
  const [one, other] = [{ n: 1 }, { n: 2 }]
  expect([count(one), count(one), count(other), count(other)]).toEqual([undefined, undefined, 2, 2])
  expect(times).toBe(2)
})
