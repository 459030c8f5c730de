import { readdirSync, readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { converted } from '../../src/document/converted'
import { switchUnits } from '../../src/document/edits/switchUnits'
import { quantityAt } from '../../src/document/numbers'
import type { Quantity } from '../../src/document/quantities'
import { readTrain } from '../../src/document/readTrain'
import type { TrainDocument } from '../../src/document/schema'
import type { DocumentUnits } from '../../src/mechanics/units'
import { asFound } from '../../src/mechanics/readings/asFound'

const all: DocumentUnits[] = (['mm', 'in'] as const).flatMap((length) =>
  (['um', 'mm', 'mil'] as const).flatMap((fine) =>
    (['C', 'F'] as const).map((temperature) => ({ length, fine, temperature })),
  ),
)
const folder = new URL('../../examples/', import.meta.url)
const examples = readdirSync(folder)
  .filter((name) => name.endsWith('.json'))
  .map((name): [string, TrainDocument] => [
    name,
    JSON.parse(readFileSync(new URL(name, folder), 'utf8')) as TrainDocument,
  ])

describe('a document in other units', () => {
  it.each(examples)('%s comes back byte for byte from every set of units', (_, document) => {
    const own = { ...document.units, temperature: document.units.temperature ?? ('C' as const) }
    for (const units of all) {
      const there = switchUnits(document, units)
      const back = switchUnits(there, own)
      expect(JSON.stringify({ ...back, units: 0 })).toBe(JSON.stringify({ ...document, units: 0 }))
      expect(JSON.stringify(switchUnits(back, units))).toBe(JSON.stringify(there))
    }
  })

  it.each(examples)('%s is the same train in every set of units', (_, document) => {
    const read = readTrain(document)
    if (!read.ok) throw new Error('an example is refused')
    const lines = read.train.couplings.map((coupling) => asFound(coupling).line)
    for (const units of all) {
      const there = readTrain(switchUnits(document, units))
      if (!there.ok) throw new Error(JSON.stringify(there.refused))
      expect(there.train.bodies.map(({ feet }) => feet.map(({ x }) => x.toFixed(6)))).toEqual(
        read.train.bodies.map(({ feet }) => feet.map(({ x }) => x.toFixed(6))),
      )
      there.train.couplings.forEach((coupling, c) => {
        const line = asFound(coupling).line
        for (const way of ['y', 'z', 'sy', 'sz'] as const)
          expect(line[way]).toBeCloseTo(lines[c]?.[way] ?? NaN, 6)
      })
    }
  })

  it('never drifts, whatever was typed and however often it is switched', () => {
    const quantities: Quantity[] = ['length', 'fine', 'slope', 'mass', 'temperature', 'expansion']
    fc.assert(
      fc.property(
        fc.constantFrom(...quantities),
        fc.integer({ min: -9_999_999, max: 9_999_999 }),
        fc.integer({ min: 0, max: 6 }),
        fc.array(fc.constantFrom(...all), { minLength: 1, maxLength: 12 }),
        (quantity, whole, decimals, tour) => {
          // no machine is hotter than ten thousand degrees
          const value = Number(`${whole}e-${quantity === 'temperature' ? decimals + 3 : decimals}`)
          let [now, units] = [value, all[0] as DocumentUnits]
          for (const to of [...tour, all[0] as DocumentUnits]) {
            now = converted(now, quantity, units, to)
            units = to
          }
          expect(Object.is(now, value) || now === value).toBe(true)
        },
      ),
      { numRuns: 5000 },
    )
  })

  it.each([
    // a conversion that lay within the last roundings one way and just beyond them the other
    ['mass', -145_050.7, 'in'],
    ['length', 0.1, 'in'],
  ] as const)('%s %d comes back from %s', (quantity, value, length) => {
    const [own, other] = [all[0] as DocumentUnits, { ...(all[0] as DocumentUnits), length }]
    const there = converted(value, quantity, own, other)
    expect(there).not.toBe(value)
    expect(converted(there, quantity, other, own)).toBe(value)
  })

  it('knows what stands where', () => {
    expect(quantityAt(['machines', 0, 'axis', 'z'])).toBe('length')
    expect(quantityAt(['machines', 0, 'axis', 'left', 'z'])).toBe('length')
    expect(quantityAt(['machines', 3, 'feet', 1, 'pack', 'now'])).toBe('fine')
    expect(quantityAt(['couplings', 0, 'found', 2, 'readings', 1, 0])).toBe('hour')
    expect(quantityAt(['couplings', 0, 'found', 2, 'readings', 1, 1])).toBe('fine')
    expect(quantityAt(['plan', 'share'])).toBe('plain')
    expect(quantityAt(['skids', 0, 'feet', 0, 'hole', 'clearance'])).toBe('fine')
    expect(quantityAt(['machines', 0, 'growth', 'hot', 0, 'heat', 'expansion'])).toBe('expansion')
  })
})
