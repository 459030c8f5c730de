import fc from 'fast-check'
import { expect, test } from 'vitest'
import { differences } from '../../src/app/shelf/difference'

const train = {
  name: 'Air',
  machines: [
    { id: 'm', name: 'Motor', axis: { z: 710 }, feet: [{ id: '1', x: 300, pack: { now: 3000 } }] },
    { id: 'c', name: 'Compressor', axis: { z: 820 }, feet: [] as unknown[] },
  ],
  couplings: [
    {
      id: 'k',
      found: [
        {
          kind: 'rim',
          readings: [
            [12, 0],
            [3, -5],
          ],
        },
      ],
    },
  ],
}
type Train = typeof train
const changed = (change: (copy: Train) => void): Train => {
  const copy = structuredClone(train)
  change(copy)
  return copy
}

test('a number is told with its place in the file and in words', () => {
  const after = changed((copy) => {
    const [foot] = copy.machines[0]?.feet ?? []
    Object.assign(foot ?? {}, { pack: { now: 2900 } })
  })
  expect(differences(train, after)).toEqual([
    {
      at: 'machines[0].feet[0].pack.now',
      where: 'machines, Motor, feet, 1, pack, now',
      before: 3000,
      after: 2900,
    },
  ])
})

test('what is added or gone is one place, and what stands behind it is not told', () => {
  const after = changed((copy) => copy.machines.shift())
  expect(differences(train, after)).toEqual([
    expect.objectContaining({ at: 'machines[0]', where: 'machines, Motor', after: undefined }),
  ])
  expect(differences(after, train)).toEqual([
    expect.objectContaining({ at: 'machines[0]', before: undefined, after: train.machines[0] }),
  ])
})

test('an order that changed is one place; a machine that moved in it is itself', () => {
  const after = changed((copy) => copy.machines.reverse())
  expect(differences(train, after)).toEqual([
    { at: 'machines', where: 'machines, order', before: ['m', 'c'], after: ['c', 'm'] },
  ])
})

test('a reading is told by its number in the list, the readings of a set as they stand', () => {
  const after = changed((copy) => {
    const [set] = copy.couplings[0]?.found ?? []
    Object.assign(set ?? {}, {
      readings: [
        [12, 0],
        [3, -6],
      ],
    })
  })
  expect(differences(train, after)).toEqual([
    expect.objectContaining({
      at: 'couplings[0].found[0].readings',
      where: 'couplings, k, found, 1, readings',
      after: [
        [12, 0],
        [3, -6],
      ],
    }),
  ])
})

test('nothing differs from itself, and anything else differs somewhere', () => {
  const sorted = (_key: string, value: unknown): unknown =>
    typeof value === 'object' && value !== null && !Array.isArray(value)
      ? Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)))
      : value
  const same = (a: unknown, b: unknown) => JSON.stringify(a, sorted) === JSON.stringify(b, sorted)
  fc.assert(
    fc.property(fc.jsonValue(), fc.jsonValue(), (before, after) => {
      expect(differences(before, before)).toEqual([])
      expect(differences(before, after).length > 0).toBe(!same(before, after))
    }),
    { numRuns: 500 },
  )
})
