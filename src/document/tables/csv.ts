import { harmless } from '../../language/harmless'

/**
 * A table as CSV that a spreadsheet shows and never runs. A text that a spreadsheet would take for a
 * formula gets an apostrophe before it, as people write it there themselves; numbers stay numbers, with
 * their sign. Numbers are written with a point and without signs between thousands.
 */
export type CsvCell = string | number | boolean | undefined

/** What may stand before a formula inside a cell: another program may cut the line at other signs. */
const cut = '(?<=^|[,;|\\t\\r\\n])'
/** Signs that begin a formula, their wide forms too; spaces, quotes and apostrophes before them do not help. */
const formula = '[\\s\'"]*[=+\\-@＝＋－＠\\t\\r\\n]'
const dangerous = new RegExp(`${cut}(?=${formula})`, 'g')
const guardedCut = new RegExp(`${cut}'(?=${formula})`, 'g')
const plainNumber = /^-?\d+(\.\d+)?(e[+-]?\d+)?$/i

/** A text with an apostrophe before all that a spreadsheet could run; a plain number stays as it is. */
export const guarded = (text: string): string =>
  plainNumber.test(text) ? text : text.replace(dangerous, "'")

/** The text as it was before it was guarded. */
export const unguarded = (text: string): string => text.replace(guardedCut, '')

/** Rows of cells as CSV (RFC 4180): commas between cells, CR LF behind each row. */
export const csvText = (rows: readonly (readonly CsvCell[])[]): string =>
  rows.map((row) => `${row.map(written).join(',')}\r\n`).join('')

function written(cell: CsvCell): string {
  if (cell === undefined) return ''
  if (typeof cell === 'boolean') return cell ? 'yes' : 'no'
  if (typeof cell === 'number') return Number.isFinite(cell) ? String(cell) : ''
  const text = guarded(harmless(cell))
  return /[",;|\t\r\n]|^\s|\s$/.test(text) ? `"${text.replaceAll('"', '""')}"` : text
}
