import type { ReadingTable } from './readingTable'

/** Of its card, the part that names the hours; what a digit of these tables is wide, and the space between columns (px). */
const [hours, digit, between] = [0.26, 7.4, 6]

/**
 * A table whose numbers are wider together than its card, as several, one under the other: a number that is broken into
 * two lines is read as two.
 */
export function columnsFitting(table: ReadingTable, width: number): ReadingTable[] {
  const longest = Math.max(
    0,
    ...[...table.columns, ...table.rows.flatMap(({ cells }) => cells)].map(longestNumber),
  )
  const most = Math.max(1, Math.floor((width * (1 - hours)) / (longest * digit + between)))
  if (table.columns.length <= most) return [table]
  return Array.from({ length: Math.ceil(table.columns.length / most) }, (_, part) => {
    const [from, to] = [part * most, (part + 1) * most]
    return {
      unit: table.unit,
      columns: table.columns.slice(from, to),
      rows: table.rows
        .map(({ label, cells }) => ({ label, cells: cells.slice(from, to) }))
        .filter(({ cells }) => cells.some((cell) => cell !== '')),
    }
  })
}

/** Letters of the longest word of a text that has a digit. */
const longestNumber = (text: string): number =>
  Math.max(0, ...text.split(/\s/).map((word) => (/\d/.test(word) ? word.length : 0)))
