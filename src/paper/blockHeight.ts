import { cardHeight } from './cardHeight'
import type { Block, Table } from './page'
import { print } from './print'
import { columnGap, proseWidth, textWidth } from './size'
import { stepHeight } from './stepHeight'
import { linesHeight, linesOf } from './textSize'

/**
 * Height of a block on paper with the gap under it (mm).
 * @param width what it has to lie in (mm)
 */
export function blockHeight(block: Block, width: number = textWidth): number {
  switch (block.kind) {
    case 'title':
      return linesHeight(linesOf(block.text, print.title, width, true), print.title, 1.15) + 3.4
    case 'heading': {
      const text = `${block.text}  ${block.aside ?? ''}`
      return linesHeight(linesOf(text, print.heading, width), print.heading) + 1.8
    }
    case 'text': {
      const points = print[block.look]
      const bold = block.look === 'lead' || block.look === 'strong'
      const room = bold ? width : Math.min(width, proseWidth(points))
      return linesHeight(linesOf(block.text, points, room, bold), points) + print.gap
    }
    case 'box':
      return (
        linesHeight(linesOf(block.title, print.strong, width - 8, true), print.strong) +
        block.items.reduce((sum, item) => sum + itemHeight(item, width), 0) +
        4.4 +
        print.gap
      )
    case 'list':
      return listHeights(block, width).reduce((sum, height) => sum + height, 0) + print.gap
    case 'table':
      return (
        headHeight(block, width) +
        block.rows.reduce((sum, row) => sum + rowHeight(block, row, width), 0) +
        print.gap
      )
    case 'figures':
      return (
        Math.max(
          ...block.figures.map(({ height, width: wide, caption }) => {
            const lines = caption === undefined ? 0 : linesOf(caption, print.small, wide)
            return height + linesHeight(lines, print.small) + (lines > 0 ? 1 : 0)
          }),
        ) + print.gap
      )
    case 'blanks':
      return Math.ceil(block.labels.length / block.columns) * print.blank + print.gap
    case 'boxes':
      return boxesHeight(block, width) + print.gap
    case 'step':
      return stepHeight(block.step) + print.gap
    case 'code': {
      // the white around it lies over the gaps above and below
      const letters = linesHeight(block.groups.length, print.small, print.tight)
      return Math.max(block.figure.height - 2 * print.gap, letters) + print.gap
    }
    case 'feet':
      return Math.max(...block.cards.map((card) => cardHeight(card, block.columns))) + print.gap
    case 'beside': {
      const all = block.parts.reduce((sum, part) => sum + part.width, 0)
      const room = width - columnGap * (block.parts.length - 1)
      return Math.max(
        ...block.parts.map((part) =>
          part.blocks.reduce((sum, one) => sum + blockHeight(one, (part.width / all) * room), 0),
        ),
      )
    }
  }
}

/** Rows of boxes, each as tall as its fullest: the name, and under it what is known or room for a glove's pencil (mm). */
function boxesHeight({ boxes, columns }: Extract<Block, { kind: 'boxes' }>, width: number): number {
  const inside = width / columns - 2 * print.cell.across - 1
  const heights = boxes.map(
    ({ label, value }) =>
      linesHeight(linesOf(label, print.small, inside), print.small, 1.2) +
      Math.max(print.actual, linesHeight(linesOf(value, print.plain, inside), print.plain)) +
      print.cell.along,
  )
  return heights.reduce(
    (sum, _, i) => (i % columns === 0 ? sum + Math.max(...heights.slice(i, i + columns)) : sum),
    0,
  )
}

/** Height of every item of a list; one to be ticked is as tall as its box (mm). */
export function listHeights(
  { look, items }: Extract<Block, { kind: 'list' }>,
  width: number = textWidth,
): number[] {
  return items.map((item) =>
    look === 'tick'
      ? Math.max(print.actual + 0.8, itemHeight(item, width - print.actual + 2))
      : itemHeight(item, width),
  )
}

const itemHeight = (item: string, width: number): number =>
  linesHeight(
    linesOf(item, print.plain, Math.min(width - 12, proseWidth(print.plain))),
    print.plain,
  ) + 0.8

/** What stands beside the words of a cell: its padding, and the frame of a box to write in (mm). */
export const besideWords = 2 * print.cell.across + 0.3

const columnWidth = (table: Table, column: number, width: number): number => {
  const all = table.columns.reduce((sum, part) => sum + part.width, 0)
  return ((table.columns[column]?.width ?? 1) / all) * width - besideWords
}

export const headHeight = (table: Table, width: number = textWidth): number =>
  cellsHeight(
    table,
    table.columns.map(({ head }) => head),
    print.small,
    width,
  )

/** A row with a box to write in is as tall as a glove's pencil wants (mm). */
export function rowHeight(table: Table, row: readonly string[], width: number = textWidth): number {
  const height = cellsHeight(table, row, print.plain, width)
  return table.tall === true || row.includes('') ? Math.max(print.tallRow, height) : height
}

const cellsHeight = (
  table: Table,
  cells: readonly string[],
  points: number,
  width: number,
): number =>
  Math.max(
    ...cells.map((text, c) => {
      const head = points === print.small
      const strong = table.columns[c]?.strong === true
      const size = strong && !head ? print.strong : points
      const bold = strong || head
      return linesHeight(linesOf(text, size, columnWidth(table, c, width), bold), size)
    }),
  ) +
  2 * print.cell.along +
  0.2
