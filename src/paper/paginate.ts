import { cardHeight } from './cardHeight'
import type { Block, Chapter, Page, PaperSize, Table } from './page'
import { print } from './print'
import { roomHeight, textWidth } from './size'
import { stepHeight } from './stepHeight'
import { linesHeight, linesOf } from './textSize'

/** Cuts chapters into pages: lists and tables between their rows, headings never from what follows. */
export function paginate(chapters: readonly Chapter[], size: PaperSize): Page[] {
  return chapters.flatMap((chapter) => pagesOf(chapter, roomHeight(size)))
}

function pagesOf({ section, title, blocks }: Chapter, room: number): Page[] {
  const pages: Block[][] = [[]]
  let used = 0
  const turn = () => {
    pages.push([])
    used = 0
  }
  const waiting = [...blocks]
  let last: Heading | undefined
  for (let block = waiting.shift(); block !== undefined; block = waiting.shift()) {
    const page = pages.at(-1) ?? []
    const height = blockHeight(block)
    if (block.kind === 'heading') last = block
    if (used + height + followers(block, waiting) <= room) {
      page.push(block)
      used += height
      continue
    }
    const parts = split(block, room - used)
    if (parts) {
      page.push(parts[0])
      waiting.unshift(...again(last), parts[1])
      turn()
    } else if (used > 0) {
      waiting.unshift(block)
      turn()
    } else {
      // taller than any page: it stands alone and runs on, rather than being cut
      page.push(block)
      used = room
    }
  }
  return pages
    .filter((page) => page.length > 0)
    .map((page, i) => ({
      section,
      title: i === 0 ? title : `${title} (continued)`,
      blocks: page,
    }))
}

type Heading = Extract<Block, { kind: 'heading' }>

/** Whatever goes on over the page says there what it is. */
const again = (heading: Heading | undefined): Block[] =>
  heading ? [{ kind: 'heading', text: heading.text, aside: 'continued' }] : []

/** What must fit under a heading, or under drawings that belong to what follows, for it to stand there. */
function followers(block: Block, waiting: readonly Block[]): number {
  if (block.kind !== 'heading' && !(block.kind === 'figures' && block.leads === true)) return 0
  const [next, ...rest] = waiting
  const more = next ? followers(next, rest) : 0
  return next && more > 0 ? blockHeight(next) + more : leastHeight(next)
}

/** As much of a list or table as fits, and the rest; undefined where either would be less than two rows. */
function split(block: Block, room: number): [Block, Block] | undefined {
  if (block.kind === 'table') {
    const count = fitting(
      block.rows.map((row) => rowHeight(block, row)),
      room - headHeight(block) - print.gap,
    )
    if (count < 2) return undefined
    return [
      { ...block, rows: block.rows.slice(0, count) },
      { ...block, rows: block.rows.slice(count) },
    ]
  }
  if (block.kind === 'list') {
    const count = fitting(block.items.map(itemHeight), room - print.gap)
    if (count < 2) return undefined
    return [
      { ...block, items: block.items.slice(0, count) },
      { ...block, items: block.items.slice(count) },
    ]
  }
  return undefined
}

function fitting(heights: readonly number[], room: number): number {
  let used = 0
  const first = heights.findIndex((height) => (used += height) > room)
  return Math.min(first < 0 ? heights.length : first, heights.length - 2)
}

/** What must stand under a heading for it to stand there too. */
function leastHeight(block: Block | undefined): number {
  if (!block) return 0
  if (block.kind === 'table' && block.rows.length > 3) {
    const two = block.rows.slice(0, 2).reduce((sum, row) => sum + rowHeight(block, row), 0)
    return headHeight(block) + two + print.gap
  }
  if (block.kind === 'list' && block.items.length > 3)
    return block.items.slice(0, 2).reduce((sum, item) => sum + itemHeight(item), 0) + print.gap
  return blockHeight(block)
}

/** Height of a block on paper with the gap under it (mm). */
export function blockHeight(block: Block): number {
  switch (block.kind) {
    case 'heading': {
      const text = `${block.text}  ${block.aside ?? ''}`
      return linesHeight(linesOf(text, print.heading, textWidth), print.heading) + 3.2
    }
    case 'text': {
      const points = print[block.look]
      const bold = block.look === 'lead' || block.look === 'strong'
      return linesHeight(linesOf(block.text, points, textWidth, bold), points) + print.gap
    }
    case 'box':
      return (
        linesHeight(linesOf(block.title, print.strong, textWidth - 8, true), print.strong) +
        block.items.reduce((sum, item) => sum + itemHeight(item), 0) +
        4.4 +
        print.gap
      )
    case 'list':
      return block.items.reduce((sum, item) => sum + itemHeight(item), 0) + print.gap
    case 'table':
      return (
        headHeight(block) +
        block.rows.reduce((sum, row) => sum + rowHeight(block, row), 0) +
        print.gap
      )
    case 'figures':
      return (
        Math.max(
          ...block.figures.map(({ height, width, caption }) => {
            const lines = caption === undefined ? 0 : linesOf(caption, print.small, width)
            return height + linesHeight(lines, print.small) + (lines > 0 ? 1 : 0)
          }),
        ) + print.gap
      )
    case 'blanks':
      return Math.ceil(block.labels.length / block.columns) * print.blank + print.gap
    case 'step':
      return stepHeight(block.step) + print.gap
    case 'feet':
      return Math.max(...block.cards.map((card) => cardHeight(card, block.columns))) + print.gap
  }
}

const itemHeight = (item: string): number =>
  linesHeight(linesOf(item, print.plain, textWidth - 12), print.plain) + 0.8

const columnWidth = (table: Table, column: number): number => {
  const all = table.columns.reduce((sum, { width }) => sum + width, 0)
  return ((table.columns[column]?.width ?? 1) / all) * textWidth - 2 * print.cell.across
}

const headHeight = (table: Table): number =>
  cellsHeight(
    table,
    table.columns.map(({ head }) => head),
    print.small,
  )

function rowHeight(table: Table, row: readonly string[]): number {
  const height = cellsHeight(table, row, print.plain)
  return table.tall === true ? Math.max(print.tallRow, height) : height
}

const cellsHeight = (table: Table, cells: readonly string[], points: number): number =>
  Math.max(
    ...cells.map((text, c) => {
      const size = table.columns[c]?.strong === true ? print.strong : points
      return linesHeight(linesOf(text, size, columnWidth(table, c), points === print.small), size)
    }),
  ) +
  2 * print.cell.along +
  0.2
