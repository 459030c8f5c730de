import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readNumber } from '../../src/document/typed/number'
import type { Quantity } from '../../src/document/quantities'
import type { DocumentUnits } from '../../src/mechanics/units'

const metric: DocumentUnits = { length: 'mm', fine: 'mm', temperature: 'C' }
const inches: DocumentUnits = { length: 'in', fine: 'mil', temperature: 'F' }

/** 1 in = 25.4 mm and 1 lb = 0.45359237 kg, exact by international definition (1959). */
const read: [text: string, quantity: Quantity, units: DocumentUnits, value: number][] = [
  ['12', 'length', metric, 12],
  ['0,4', 'fine', metric, 0.4],
  ['0.4', 'fine', metric, 0.4],
  ['.5', 'fine', metric, 0.5],
  [',5', 'fine', metric, 0.5],
  ['-6/2+1', 'fine', metric, -2],
  ['−6 / 2 + 1', 'fine', metric, -2],
  ['0.1+0.2', 'fine', metric, 0.3],
  ['3*0.25', 'fine', metric, 0.75],
  ['1 - -2', 'fine', metric, 3],
  ['12 3/8', 'length', inches, 12.375],
  ['-12 3/8', 'length', inches, -12.375],
  ['12 3/8 + 1/2', 'length', inches, 12.875],
  ['12 3/8"', 'length', metric, 314.325],
  ['12 3/8 in', 'length', metric, 314.325],
  ['25.4 mm', 'length', inches, 1],
  ['0.4 mm', 'fine', inches, 15.7480314961],
  ['10 mil', 'fine', metric, 0.254],
  ['10mils', 'fine', metric, 0.254],
  ['400 µm', 'fine', metric, 0.4],
  ['400 um', 'fine', metric, 0.4],
  ['0.001 in', 'fine', inches, 1],
  ['1 mm + 10 mil', 'fine', metric, 1.254],
  ['1 + 2 in', 'length', metric, 76.2],
  ['0.5 mil/in', 'slope', metric, 0.5],
  ['0.5 mm/m', 'slope', inches, 0.5],
  ['0.25°', 'slope', metric, 4.36332312999],
  ['20 °C', 'temperature', inches, 68],
  ['68 F', 'temperature', metric, 20],
  ['-40C', 'temperature', inches, -40],
  ['54 t', 'mass', metric, 54000],
  ['1 kg', 'mass', inches, 2.20462262185],
  ['100 ft·lb', 'torque', metric, 135.581794833],
  ['360 Nm', 'torque', inches, 265.52237374],
  ['1490 rpm', 'speed', metric, 1490],
]

describe('a number as people write it', () => {
  it.each(read)('%s as a %s is read', (text, quantity, units, value) => {
    expect(readNumber(text, quantity, units)).toEqual({ ok: true, value })
  })

  it.each([
    ['', 'nothing is written'],
    ['   ', 'nothing is written'],
    ['abc', 'where a number should be'],
    ['12 mrad', 'is no unit'],
    ['1,234.5', 'more than one decimal sign'],
    ['1.2.3', 'more than one decimal sign'],
    ['1 2', 'two numbers'],
    ['1.5 3/8', 'two numbers'],
    ['6/', 'ends before its last number'],
    ['6/0', 'no finite number'],
    ['5+', 'ends before'],
    ['*5', 'where a number should be'],
    ['1 mm + 2', 'some have none'],
    ['5 %', 'cannot be read'],
    ['=SUM(A1)', 'cannot be read'],
    ['1e5', 'without + or -'],
    ['1'.repeat(300), 'too many'],
  ])('%s is refused with the reason', (text, why) => {
    const entry = readNumber(text, 'length', metric)
    expect(entry.ok).toBe(false)
    expect(entry.ok ? '' : entry.why).toContain(why)
  })

  it('reads back whatever number is shown', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e6, max: 1e6 }), (x) => {
        const value = Number(x.toPrecision(9))
        if (/e/.test(String(value))) return
        expect(readNumber(String(value), 'fine', metric)).toEqual({ ok: true, value: value || 0 })
        expect(readNumber(String(value).replace('.', ','), 'fine', metric)).toEqual({
          ok: true,
          value: value || 0,
        })
      }),
    )
  })

  it('answers any text without throwing', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        const entry = readNumber(text, 'fine', inches)
        expect(entry.ok ? Number.isFinite(entry.value) : entry.why.length > 5).toBe(true)
      }),
      { numRuns: 2000 },
    )
  })
})
