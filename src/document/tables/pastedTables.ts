import type { DocumentUnits } from '../../mechanics/units'
import type { TrainDocument } from '../schema'
import { allTables } from './allTables'
import type { CsvCell } from './csv'
import {
  exported,
  placeRows,
  readingOf,
  readRows,
  type ColumnMatch,
  type PasteTarget,
  type PlacedRow,
} from './pasted'

/** Lines of a pasted text that stand together, blank lines around them. */
export interface PastedBlock {
  /** Its first line, counted from 1 in the whole text. */
  readonly line: number
  readonly text: string
}

/** One table of a pasted text: into what it goes, which column is what. */
export interface PastedTable {
  readonly line: number
  readonly cells: readonly (readonly string[])[]
  /** Undefined where no heading tells, or where headings fit several: somebody has to say. */
  readonly target: PasteTarget | undefined
  readonly match: ColumnMatch
}

type Cells = readonly (readonly string[])[]

/** Parts a text at its blank lines; a line of nothing but separators, as a spreadsheet copies an empty row, is blank. */
export function blocksOf(text: string): PastedBlock[] {
  const blocks: { line: number; lines: string[] }[] = []
  let open = false
  text.split(/\r\n|\n|\r/).forEach((line, i) => {
    const blank = /^[\s,;|\uFEFF]*$/.test(line)
    if (!blank && open) blocks.at(-1)?.lines.push(line)
    else if (!blank) blocks.push({ line: i + 1, lines: [line] })
    open = !blank
  })
  return blocks.map(({ line, lines }) => ({ line, text: lines.join('\n') }))
}

/**
 * Which table each block is: by the line above its headings that names it, else by its headings. A block without
 * headings goes on with the one above where it looks like more of it, or is the one that is asked for.
 * @param own the table in whose place it was pasted, taken where others fit no better
 */
export function pastedTablesOf(
  blocks: readonly { readonly line: number; readonly cells: Cells }[],
  own?: PasteTarget,
): PastedTable[] {
  const tables: PastedTable[] = []
  for (const block of blocks) {
    const table = tableOf(block.line, block.cells, own, tables.at(-1))
    if (table) tables.push(table)
  }
  return tables
}

function tableOf(
  line: number,
  cells: Cells,
  own: PasteTarget | undefined,
  above: PastedTable | undefined,
): PastedTable | undefined {
  const titled = titleOf(cells)
  if (titled) {
    const rest = cells.slice(1)
    return rest.length === 0
      ? undefined
      : { line: line + 1, cells: rest, target: titled, match: readingOf(rest, titled.columns) }
  }
  const headed = headedBy(cells, own)
  if (headed === 'none' && above && goesOn(cells, above))
    return { line, cells, target: above.target, match: { ...above.match, headed: false } }
  const target = headed === 'none' ? own : headed
  return { line, cells, target, match: matchOf(cells, target) }
}

/** Whether rows look like more of a table: as many columns, and figures where it has figures. */
function goesOn([first = []]: Cells, { cells, target, match }: PastedTable): boolean {
  const width = Math.max(...cells.map((row) => row.length))
  return (
    first.length === width &&
    first.every((cell, at) => {
      const column = target?.columns.find(({ key }) => key === match.keys[at])
      const words = !column || column.kind === 'text' || column.kind === 'yes'
      return words || cell.trim() === '' || /\d/.test(cell)
    })
  )
}

/** A table with its columns taken for those of another target; none of them where it goes nowhere. */
export const retargeted = (table: PastedTable, target: PasteTarget | undefined): PastedTable => ({
  ...table,
  target,
  match: matchOf(table.cells, target),
})

const matchOf = (cells: Cells, target: PasteTarget | undefined): ColumnMatch =>
  readingOf(cells, target?.columns ?? [])

/** The table that a first line names which has nothing but a name. */
function titleOf([first = []]: Cells): PasteTarget | undefined {
  const said = first.map((cell) => cell.trim().toLowerCase()).filter((cell) => cell !== '')
  return said.length === 1 ? allTables.find(({ what }) => what === said[0]) : undefined
}

/** The table whose headings a first row has: most of them known; undefined where several fit alike. */
function headedBy(
  [first = []]: Cells,
  own: PasteTarget | undefined,
): PasteTarget | undefined | 'none' {
  const words = first.filter((cell) => cell.trim() !== '').length
  const fits = allTables.map((target) => {
    const { headed, keys } = readingOf([first], target.columns)
    const told = headed && (target.needs === undefined || keys.includes(target.needs))
    return { target, known: told ? keys.filter((key) => key !== '').length : 0 }
  })
  const most = Math.max(...fits.map(({ known }) => known))
  // a name among figures may have a word of a heading in it: most of a row of headings is known
  if (most < 2 || most * 2 < words) return 'none'
  const best = fits.filter(({ known }) => known === most).map(({ target }) => target)
  return best.find((target) => target === own) ?? (best.length === 1 ? best[0] : undefined)
}

/** What pasted tables make of a document, and what becomes of each row of each. */
export function placeTables(
  document: TrainDocument,
  tables: readonly PastedTable[],
  units: DocumentUnits,
): { readonly document: TrainDocument; readonly placed: readonly (readonly PlacedRow[])[] } {
  const placed = new Map<PastedTable, readonly PlacedRow[]>()
  let next = document
  // machines come before what stands on them, in whatever order they were pasted
  for (const target of allTables)
    for (const table of tables.filter((one) => one.target === target)) {
      const rows = readRows(table.cells, table.match, target.columns, units)
      const done = placeRows(next, rows, target.put)
      next = done.document
      placed.set(table, done.placed)
    }
  return { document: next, placed: tables.map((table) => placed.get(table) ?? []) }
}

/** All tables of a document that have rows, each under its name, blank lines between: what can be pasted whole. */
export function allExported(document: TrainDocument, units: DocumentUnits): CsvCell[][] {
  return allTables.flatMap((target) => {
    const table = exported(target, document, units)
    return table.length > 1 ? [[target.what], ...table, []] : []
  })
}
