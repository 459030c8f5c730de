import { csvText, type CsvCell } from '../../engine/entry/csv'

/** Cells of a table as it comes out of a spreadsheet or a CSV file: tabs, commas or semicolons between them. */
export async function cellsOf(text: string): Promise<string[][]> {
  const { default: papa } = await import('papaparse')
  const { data } = papa.parse<string[]>(text.replace(/^\uFEFF/, '').replace(/\s+$/, ''), {
    ...(text.includes('\t') && { delimiter: '\t' }),
    delimitersToGuess: [',', ';', '\t', '|'],
    skipEmptyLines: false,
  })
  return data.filter((row) => row.length > 1 || row[0]?.trim() !== '' || data.length > 1)
}

/** Offers a table as a CSV file; the mark in front tells spreadsheets that it is UTF-8. */
export function saveCsv(name: string, rows: readonly (readonly CsvCell[])[]): void {
  const link = document.createElement('a')
  link.href = URL.createObjectURL(
    new Blob([`\uFEFF${csvText(rows)}`], { type: 'text/csv;charset=utf-8' }),
  )
  link.download = name
  link.click()
  // the download has begun when the next turn comes; a minute is room for slow disks
  setTimeout(() => {
    URL.revokeObjectURL(link.href)
  }, 60_000)
}

/** A file name for a table of a job. */
export const csvName = (job: string, what: string): string => {
  const plain = `${job} ${what}`.replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-+|-+$/g, '')
  return `${plain.slice(0, 80).toLowerCase()}.csv`
}
