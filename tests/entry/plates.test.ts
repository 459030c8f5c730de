import { expect, it } from 'vitest'
import { platesText, readPlates } from '../../src/document/typed/plates'

const um = { length: 'mm', fine: 'um', temperature: 'C' } as const
const mil = { length: 'in', fine: 'mil', temperature: 'F' } as const

it.each([
  ['2000, 500, 2 x 50', um, [2000, 500, 50, 50]],
  ['3000; 0.05 mm', um, [3000, 50]],
  ['125 and 2x5', mil, [125, 5, 5]],
  // a comma alone is a decimal comma, as everywhere
  ['12,5', mil, [12.5]],
  ['', um, []],
])('%s', (text, units, plates) => {
  expect(readPlates(text, units)).toEqual({ ok: true, plates })
})

it.each([
  ['2000, thick', um, /^“thick”: /],
  ['0', um, /above 0/],
  ['-50', um, /above 0/],
  ['60 x 1', mil, /more than 50 plates/],
])('%s is none', (text, units, why) => {
  const read = readPlates(text, units)
  expect(read.ok ? '' : read.why).toMatch(why)
})

it('what is written reads back', () => {
  for (const plates of [[2000, 500, 50, 50], [12.5], []])
    expect(readPlates(platesText(plates), um)).toEqual({ ok: true, plates })
})
