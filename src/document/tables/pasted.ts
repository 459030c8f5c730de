import type { TrainDocument } from '../schema'
import { fineSign, type DocumentUnits } from '../../mechanics/units'
import { unguarded, type CsvCell } from './csv'
import { isSum, readNumber } from '../typed/number'
import type { Quantity } from '../quantities'
import { unitSign } from '../unitSign'

/** A column that a pasted table may have, and that an exported one has. */
export interface PasteColumn {
  readonly key: string
  /** Its heading when exported, and the first thing looked for: "pack now". */
  readonly heading: string
  /** Other headings it may have, as words that all have to be in it: "shim", "shims now". */
  readonly names: readonly string[]
  /** What a number measures, or that it is a text or a yes or no. */
  readonly kind: Quantity | 'text' | 'yes'
  /** Whether an empty cell means the one above it, as names often do. */
  readonly down?: boolean
  /** Whether one reading belongs there, so that a sum is a slip. */
  readonly reading?: boolean
  /** Whether it is in percent, with the sign or without. */
  readonly percent?: boolean
}

export type PastedValues = Readonly<Record<string, number | string | boolean>>

/** What is pasted into: its columns, and what a row of it does to a document. */
export interface PasteTarget {
  /** What a row is, in the plural: "feet". */
  readonly what: string
  readonly columns: readonly PasteColumn[]
  /** Key of the column without which headings are never taken for this table: it tells it from another that has the rest. */
  readonly needs?: string
  /** Puts one row into the document and says what that does, or why it cannot. */
  readonly put: (document: TrainDocument, values: PastedValues) => PasteOutcome
  /** What the document holds, for export; its keys are those of the columns. */
  readonly rows: (document: TrainDocument) => readonly Readonly<Record<string, CsvCell>>[]
}

export type PasteOutcome =
  { readonly document: TrainDocument; readonly does: string } | { readonly why: string }

/** Which column of a pasted table is what. */
export interface ColumnMatch {
  /** Whether the first row holds headings. */
  readonly headed: boolean
  /** Keys by pasted column; "" leaves it out. */
  readonly keys: readonly string[]
  /** Units that the headings name, by pasted column; "" where none is named. */
  readonly units: readonly string[]
}

/** One row of a pasted table as read: its values, or what is wrong with it. */
export interface PastedRow {
  /** Counted from 1 in what was pasted. */
  readonly line: number
  readonly cells: readonly string[]
  readonly values: PastedValues
  readonly faults: readonly string[]
}

/** Guesses from its first row which column is what; without headings, the columns in their usual order. */
export function readingOf(
  cells: readonly (readonly string[])[],
  columns: readonly PasteColumn[],
): ColumnMatch {
  const first = cells[0] ?? []
  const width = Math.max(0, ...cells.map((row) => row.length))
  const headings = Array.from({ length: width }, (_, i) => headingOf(first[i] ?? ''))
  const scores = headings
    .flatMap(({ words }, at) =>
      columns.map((column) => ({ at, key: column.key, score: likeness(words, column) })),
    )
    .filter(({ score }) => score > 0)
    .sort((a, b) => b.score - a.score)
  const keys = new Array<string>(width).fill('')
  const taken = new Set<string>()
  for (const { at, key } of scores) {
    if (keys[at] !== '' || taken.has(key)) continue
    keys[at] = key
    taken.add(key)
  }
  const headed = taken.size > 0
  return headed
    ? { headed, keys, units: headings.map(({ unit }) => unit) }
    : { headed, keys: keys.map((_, i) => columns[i]?.key ?? ''), units: keys.map(() => '') }
}

/** Reads the rows below the headings; empty cells say nothing, empty rows are none. */
export function readRows(
  cells: readonly (readonly string[])[],
  reading: ColumnMatch,
  columns: readonly PasteColumn[],
  units: DocumentUnits,
): PastedRow[] {
  const above: Record<string, string> = {}
  return cells.flatMap((row, i): PastedRow[] => {
    if ((i === 0 && reading.headed) || row.every((cell) => cell.trim() === '')) return []
    const values: Record<string, number | string | boolean> = {}
    const faults: string[] = []
    row.forEach((cell, at) => {
      const column = columns.find(({ key }) => key === reading.keys[at])
      const own = unguarded(cell).trim()
      const text = own === '' && column?.down ? (above[column.key] ?? '') : own
      if (!column || text === '') return
      above[column.key] = text
      const read = valueOf(text, column, reading.units[at] ?? '', units)
      if (read.ok) values[column.key] = read.value
      else faults.push(`${column.heading}: ${read.why}`)
    })
    return [{ line: i + 1, cells: row, values, faults }]
  })
}

/** What became of each row: what it does, or why it does nothing. */
export interface PlacedRow {
  readonly row: PastedRow
  readonly does?: string
  readonly why?: string
}

/** Puts all rows that can be read into a document, one after the other. */
export function placeRows(
  document: TrainDocument,
  rows: readonly PastedRow[],
  put: PasteTarget['put'],
): { readonly document: TrainDocument; readonly placed: readonly PlacedRow[] } {
  let next = document
  const placed = rows.map((row): PlacedRow => {
    if (row.faults.length > 0) return { row, why: row.faults.join('; ') }
    const one = put(next, row.values)
    if ('why' in one) return { row, why: one.why }
    next = one.document
    return { row, does: one.does }
  })
  return { document: next, placed }
}

/** A table of the document as rows of cells, its headings with their units, to be written as CSV. */
export function exported(
  target: PasteTarget,
  document: TrainDocument,
  units: DocumentUnits,
): CsvCell[][] {
  const heading = ({ heading: words, kind }: PasteColumn): string => {
    const unit = kind === 'text' || kind === 'yes' || kind === 'hour' ? '' : unitSign(kind, units)
    // "µm" comes out of some spreadsheets as rubbish
    return unit === '' ? words : `${words} [${unit === fineSign.um ? 'um' : unit}]`
  }
  return [
    target.columns.map(heading),
    ...target.rows(document).map((row) => target.columns.map(({ key }) => row[key])),
  ]
}

type Value =
  | { readonly ok: true; readonly value: number | string | boolean }
  | { readonly ok: false; readonly why: string }

function valueOf(text: string, column: PasteColumn, unit: string, units: DocumentUnits): Value {
  if (column.kind === 'text') return { ok: true, value: text }
  if (column.kind === 'yes') {
    const yes = /^(yes|y|x|true|1|✓)$/i.test(text)
    if (yes || /^(no|n|false|0|-)$/i.test(text)) return { ok: true, value: yes }
    return { ok: false, why: `“${text}” is neither yes nor no` }
  }
  if (column.reading === true && isSum(text))
    return {
      ok: false,
      why: `“${text}” is a sum, where one reading belongs: write one number`,
    }
  if (column.percent === true) {
    const alone = text.replace(/\s*%$/, '')
    return readNumber(unit === '' || unit === '%' ? alone : `${alone} ${unit}`, column.kind, units)
  }
  const sign = unitSign(column.kind, units)
  const own = unit === sign || (sign === fineSign.um && unit === 'um')
  const bare = unit !== '' && !own && !/[a-z"″°µμ]\s*$/i.test(text)
  return readNumber(bare ? `${text} ${unit}` : text, column.kind, units)
}

const wordsOf = (text: string): string[] =>
  text
    .toLowerCase()
    .split(/[^\p{L}\p{N}']+/u)
    .filter((word) => word !== '')

/** A heading in words, and the unit it names: "pack now [mil]", "x (in)", "x / mm". */
function headingOf(text: string): { readonly words: readonly string[]; readonly unit: string } {
  const match = /^(.*?)\s*(?:\[([^\]]*)\]|\(([^)]*)\)|\/\s*([^/\s]+))\s*$/.exec(
    unguarded(text).trim(),
  )
  if (!match) return { words: wordsOf(text), unit: '' }
  const unit = (match[2] ?? match[3] ?? match[4] ?? '').trim()
  return { words: wordsOf(match[1] ?? ''), unit: unit === '1' ? '' : unit }
}

/** How well a heading fits a column: the same words best, then all words of a name among others. */
function likeness(heading: readonly string[], column: PasteColumn): number {
  return Math.max(
    0,
    ...[column.heading, ...column.names].map((name, i) => {
      const words = wordsOf(name)
      if (words.length === 0 || !words.every((word) => heading.includes(word))) return 0
      const same = words.length === heading.length
      return (same ? 100 : 0) + 10 * words.length - heading.length - (i === 0 ? 0 : 0.5)
    }),
  )
}
