import { withUnitsKept } from '../language/firmSpaces'
import { blockHeight, besideWords } from './blockHeight'
import type { Table, TableColumn } from './page'
import { print } from './print'
import { textWidth } from './size'
import { textLength } from './textSize'

/** So that words that just fit are not broken by the last digit of a sum (mm). */
const slack = 0.2

/** How much more of the room a column gets that wants more: a little, in proportion, or nearly all. */
const leanings = [0.5, 1, 2]

/**
 * A table whose columns are as wide as their words ask for, so that it takes the least height. Columns to write in keep
 * the width that they were designed with: it is made for a pencil. Of the others none is narrower than its longest word.
 * @param table columns with the weights that they were designed with
 * @param width what it has to lie in (mm)
 */
export function fittedToWords(table: Table, width: number = textWidth): Table {
  const { columns, rows } = table
  const all = columns.reduce((sum, column) => sum + column.width, 0)
  const wants = columns.map((column, c): Want => {
    const designed = (column.width / all) * width
    const cells = rows.map((row) => row[c] ?? '')
    if (cells.includes('')) return { least: designed, whole: designed }
    return {
      least: widest(column, cells, unbroken),
      whole: widest(column, cells, (text) => [text]),
    }
  })
  const room = width - wants.reduce((sum, want) => sum + want.least, 0)
  // words that do not fit at all are broken as the columns were designed
  if (room < 0) return table
  return [...leanings.map((lean) => handedOut(wants, room, lean)), ...wholeButTwo(wants, width)]
    .map((widths) => withWidths(table, widths, width))
    .reduce((best, one) => (blockHeight(one, width) < blockHeight(best, width) ? one : best))
}

/** One column or two as narrow as their words let them be, so that no cell of any other folds. */
function wholeButTwo(wants: readonly Want[], width: number): number[][] {
  const pairs = wants.flatMap((_, a) => wants.slice(a).map((_two, b) => [a, a + b]))
  return pairs.flatMap((narrow) => {
    const kept = wants.map(({ least, whole }, c) =>
      narrow.includes(c) ? { least, whole } : { least: whole, whole },
    )
    const room = width - kept.reduce((sum, { least }) => sum + least, 0)
    return room < 0 ? [] : [handedOut(kept, room, 1)]
  })
}

/** Widths of a column (mm): at which no word of it is broken, and at which no cell of it folds. */
interface Want {
  readonly least: number
  readonly whole: number
}

/** What no word needs is shared out alike. */
function withWidths(table: Table, widths: readonly number[], width: number): Table {
  const spare = width - widths.reduce((sum, one) => sum + one, 0)
  const columns = table.columns.map((column, c) => ({
    ...column,
    width: (widths[c] ?? 0) + spare / widths.length,
  }))
  return { ...table, columns }
}

/** Room handed out to the columns, to none more than it can use (mm). */
function handedOut(wants: readonly Want[], room: number, lean: number): number[] {
  const widths = wants.map(({ least }) => least)
  let left = room
  for (;;) {
    const short = wants.map(({ whole }, c) => Math.max(0, whole - (widths[c] ?? 0)))
    const weights = short.map((one) => (one > slack / 10 ? one ** lean : 0))
    const all = weights.reduce((sum, one) => sum + one, 0)
    if (all === 0 || left < slack) return widths
    const now = left
    short.forEach((most, c) => {
      const more = Math.min(most, (now * (weights[c] ?? 0)) / all)
      widths[c] = (widths[c] ?? 0) + more
      left -= more
    })
  }
}

/** Words, a number with its unit as one: no line ends within them. */
const unbroken = (text: string): string[] => withUnitsKept(text).split(/[^\S\u00a0]+/)

const widest = (
  { head, strong = false }: TableColumn,
  cells: readonly string[],
  parts: (text: string) => readonly string[],
): number =>
  besideWords +
  slack +
  Math.max(
    ...parts(head).map((text) => textLength(text, print.small, true)),
    ...cells.flatMap((cell) =>
      parts(cell).map((text) => textLength(text, strong ? print.strong : print.plain, strong)),
    ),
  )
