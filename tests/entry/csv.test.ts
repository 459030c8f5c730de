import fc from 'fast-check'
import Papa from 'papaparse'
import { describe, expect, test } from 'vitest'
import { harmless } from '../../src/language/harmless'
import { csvText, guarded, unguarded } from '../../src/document/tables/csv'

/** Texts rich in what begins, cuts and quotes cells. */
const nasty = fc.string({
  unit: fc.constantFrom(
    ...[
      '=',
      '+',
      '-',
      '@',
      '\t',
      '\r',
      '\n',
      ',',
      ';',
      '|',
      '"',
      "'",
      ' ',
      '1',
      'a',
      '＝',
      '.',
      'e',
    ],
  ),
  maxLength: 12,
})

/** What a spreadsheet runs: a cell that begins like a formula and not with a plain number of its own. */
const runs = (cell: string): boolean =>
  /^\s*[=+\-@＝＋－＠]/.test(cell) && !/^-?\d+(\.\d+)?(e[+-]?\d+)?(,|$)/i.test(cell)

describe('CSV', () => {
  test('comes back as it was', () => {
    fc.assert(
      fc.property(
        fc.array(fc.array(nasty, { minLength: 2, maxLength: 4 }), { minLength: 1 }),
        (rows) => {
          const { data } = Papa.parse<string[]>(csvText(rows).replace(/\r\n$/, ''), {
            delimiter: ',',
            newline: '\r\n',
          })
          // but for line ends, which are all written alike
          expect(data.map((row) => row.map(unguarded))).toEqual(
            rows.map((row) => row.map(harmless)),
          )
        },
      ),
      { numRuns: 500 },
    )
  })

  test('holds no cell that runs, also where another sign separates cells', () => {
    fc.assert(
      fc.property(fc.array(nasty, { minLength: 1, maxLength: 4 }), (row) => {
        for (const delimiter of [',', ';', '\t', '|']) {
          const { data } = Papa.parse<string[]>(csvText([row]), { delimiter })
          expect(data.flat().filter(runs)).toEqual([])
        }
      }),
      { numRuns: 500 },
    )
  })

  test('leaves numbers numbers, with their sign', () => {
    expect(csvText([[-0.25, 12, 1e-7, undefined, true, 'Foot 1']])).toBe(
      '-0.25,12,1e-7,,yes,Foot 1\r\n',
    )
    expect(guarded('-0.25')).toBe('-0.25')
    expect(guarded('-0.25+cmd')).toBe("'-0.25+cmd")
    expect(guarded('=HYPERLINK("x")')).toBe('\'=HYPERLINK("x")')
    expect(guarded('Pump; =1+1')).toBe("Pump;' =1+1")
  })
})
