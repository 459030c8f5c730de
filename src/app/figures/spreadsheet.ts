import papa from 'papaparse'
import { csvText, type CsvCell } from '../../document/tables/csv'
import { handOver } from '../services/handOver'

/** Cells of a table as it comes out of a spreadsheet or a CSV file: tabs, commas or semicolons between them. */
export function cellsOf(text: string): string[][] {
  const { data } = papa.parse<string[]>(text.replace(/^\uFEFF/, '').replace(/\s+$/, ''), {
    ...(text.includes('\t') && { delimiter: '\t' }),
    delimitersToGuess: [',', ';', '\t', '|'],
    skipEmptyLines: false,
  })
  return data.filter((row) => row.length > 1 || row[0]?.trim() !== '' || data.length > 1)
}

/** Offers a table as a CSV file; the mark in front tells spreadsheets that it is UTF-8. */
export function saveCsv(name: string, rows: readonly (readonly CsvCell[])[]): void {
  handOver(new Blob([`\uFEFF${csvText(rows)}`], { type: 'text/csv;charset=utf-8' }), name)
}
