import { describe, expect, test } from 'vitest'
import { placeRows, readingOf, readRows, type PasteColumn } from '../../src/document/tables/pasted'
import { newTrain } from '../../src/document/edits/newTrain'
import type { DocumentUnits } from '../../src/mechanics/units'

const columns: PasteColumn[] = [
  { key: 'foot', heading: 'foot', names: ['foot id', 'foot no'], kind: 'text' },
  { key: 'x', heading: 'x', names: ['position', 'distance'], kind: 'length' },
  { key: 'pack', heading: 'pack now', names: ['shim', 'pack'], kind: 'fine' },
  { key: 'holeX', heading: 'hole x', names: ['hole centre x'], kind: 'fine' },
  { key: 'shim', heading: 'may be shimmed', names: ['shimmed'], kind: 'yes' },
]
const inches: DocumentUnits = { length: 'in', fine: 'mil', temperature: 'F' }
const metric: DocumentUnits = { length: 'mm', fine: 'mm', temperature: 'C' }

describe('a pasted table', () => {
  test('is matched by its headings, in any order, with the units they name', () => {
    const cells = [
      ['Shim [mm]', 'Hole x (mil)', 'Foot No.', 'Position, in', 'remark'],
      ['2.54', '-4', '1', '12 3/8', 'rusty'],
    ]
    const reading = readingOf(cells, columns)
    expect(reading).toEqual({
      headed: true,
      keys: ['pack', 'holeX', 'foot', 'x', ''],
      units: ['mm', 'mil', '', '', ''],
    })
    expect(readRows(cells, reading, columns, inches)).toEqual([
      {
        line: 2,
        cells: cells[1],
        values: { pack: 100, holeX: -4, foot: '1', x: 12.375 },
        faults: [],
      },
    ])
  })

  test('a sum where one reading belongs is a slip: it is never added up', () => {
    const reads = (text: string) => {
      const cells = [['6'], [text]]
      const six: PasteColumn[] = [
        { key: 'six', heading: '6', names: [], kind: 'fine', reading: true },
      ]
      return readRows(cells, readingOf(cells, six), six, metric)[0]
    }
    expect(reads('-0.18')).toMatchObject({ values: { six: -0.18 }, faults: [] })
    expect(reads('0-180')?.values).toEqual({})
    expect(reads('0-180')?.faults.join()).toContain(
      '“0-180” is a sum, where one reading belongs: write one number',
    )
  })

  test('without headings is taken in the usual order', () => {
    const cells = [['F1', '400', '2,5']]
    const reading = readingOf(cells, columns)
    expect(reading.headed).toBe(false)
    expect(readRows(cells, reading, columns, metric)[0]?.values).toEqual({
      foot: 'F1',
      x: 400,
      pack: 2.5,
    })
  })

  test('says of a row what cannot be read, and leaves the row out', () => {
    const cells = [
      ['foot', 'x [in]', 'pack now', 'may be shimmed'],
      ['F1', '10', 'two', 'perhaps'],
      ['', '', '', ''],
      ['F2', '10 mm', '0.5', 'no'],
    ]
    const rows = readRows(cells, readingOf(cells, columns), columns, metric)
    expect(rows.map(({ line }) => line)).toEqual([2, 4])
    expect(rows[0]?.faults).toHaveLength(2)
    expect(rows[0]?.faults[0]).toMatch(/^pack now: “two” /)
    // a unit in the cell itself counts before the heading's
    expect(rows[1]?.values).toEqual({ foot: 'F2', x: 10, pack: 0.5, shim: false })
    const { document, placed } = placeRows(newTrain(), rows, (now, { foot }) => ({
      document: { ...now, name: `${now.name}${String(foot)}` },
      does: `adds ${String(foot)}`,
    }))
    expect(document.name).toBe('F2')
    expect(placed.map(({ does }) => does)).toEqual([undefined, 'adds F2'])
  })

  test('with a unit that is none for the column is refused row by row', () => {
    const cells = [
      ['foot', 'x [kg]'],
      ['F1', '10'],
    ]
    const [row] = readRows(cells, readingOf(cells, columns), columns, metric)
    expect(row?.faults[0]).toMatch(/“kg” is no unit/)
  })
})
