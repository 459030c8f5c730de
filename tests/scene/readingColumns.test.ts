import { expect, test } from 'vitest'
import { switchUnits } from '../../src/document/edits/switchUnits'
import { readTrain } from '../../src/document/readTrain'
import { columnsFitting } from '../../src/scene/readingColumns'
import { readingTables, type ReadingTable } from '../../src/scene/readingTable'
import { longTrain } from '../holds/longTrain'

// Nine machines leave a coupling a card of 200 px, and what was typed in mm has three more digits in mil.

const document = switchUnits(longTrain(9), { length: 'in', fine: 'mil', temperature: 'F' })
const read = readTrain(document)
if (!read.ok) throw new Error(JSON.stringify(read.refused))
const { train } = read
const tables = train.couplings.flatMap((coupling) => readingTables(train, coupling))
const digits = ({ rows }: ReadingTable) =>
  rows.flatMap(({ cells }) => cells).map((cell) => cell.length)

test('no number of a narrow card is broken, and none is left out', () => {
  const [narrow, broad] = [200, 440]
  const cut = tables.filter((table) => columnsFitting(table, narrow).length > 1)
  expect(cut.length).toBeGreaterThan(0)
  for (const table of cut) {
    const parts = columnsFitting(table, narrow)
    for (const part of parts) {
      const column = (narrow * 0.74) / part.columns.length
      // a digit of 14 px is 7 px wide
      expect(Math.max(...digits(part)) * 7).toBeLessThanOrEqual(column)
    }
    const of = (all: readonly ReadingTable[]) =>
      all.flatMap(({ rows }) => rows.flatMap(({ cells }) => cells)).filter((cell) => cell !== '')
    expect(of(parts).sort()).toEqual(of([table]).sort())
    expect(parts.flatMap(({ columns }) => columns)).toEqual(table.columns)
    expect(columnsFitting(table, broad)).toEqual([table])
  }
})
