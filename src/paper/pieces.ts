import { blockHeight, headHeight, listHeights, rowHeight } from './blockHeight'
import type { Block, Chapter } from './page'
import { print } from './print'
import { partedStep } from './stepParts'

/** The least that a page break leaves together: a row of a table, an item of a list, what is done in a step, any other block. */
export interface Piece {
  readonly chapter: Chapter
  /** First of its chapter: it stands under the chapter's title. */
  readonly first: boolean
  /** The block it is of; pieces of one block that stand on one page are that block, or a part of it, again. */
  readonly of: Block
  /** It goes on with a block that was begun by the piece before. */
  readonly goesOn: boolean
  readonly block: Block
  /** Printed over it where a page begins within its block. */
  readonly heading?: Block
  /** What it adds under the piece before it (mm). */
  readonly height: number
  /** What it takes where it begins a page: with the heading and the head of its table once more (mm). */
  readonly opening: number
  /** What a page that begins with it costs, beside the page itself; see `turning`. */
  readonly cost: number
}

/**
 * What it costs to turn the page there, where one page more costs 10: not at all between chapters; little between blocks
 * and rows; more within a step and between the feet of one machine; and what is out of the question.
 */
export const turning = {
  page: 10,
  block: 1,
  /** More, between blocks of a chapter that is wanted on one page; in its rows too, where one page would hold it. */
  whole: 1,
  row: 1.2,
  step: 4,
  feet: 3,
  never: 1000,
} as const

/** A chapter in pieces, in their order. */
export function piecesOf(chapter: Chapter, room: number): Piece[] {
  const title = blockHeight({ kind: 'title', text: chapter.title })
  const all = chapter.blocks.reduce((sum, block) => sum + blockHeight(block), 0)
  const whole = chapter.whole === true && all <= room
  let heading: Block | undefined
  let map: Block | undefined
  return chapter.blocks.flatMap((block, i) => {
    const before = chapter.blocks[i - 1]
    if (block.kind === 'heading') heading = { ...block, aside: 'continued' }
    if (block.kind === 'figures') map = before?.kind === 'feet' ? block : undefined
    // the second row of feet has its sides named by the map, once more where it begins a page
    const said = (p: number) => (p > 0 ? heading : block.kind === 'feet' ? map : undefined)
    const wanted = chapter.whole === true ? turning.whole : 0
    const cost = before === undefined ? 0 : between(before, block) + wanted
    return split(block, room).map((part, p): Piece => {
      const over = said(p)
      return {
        chapter,
        first: i === 0 && p === 0,
        of: block,
        goesOn: p > 0,
        block: part.block,
        ...(over && { heading: over }),
        height: part.height + (i === 0 && p === 0 ? title : 0),
        opening: (over ? blockHeight(over) : 0) + part.opening,
        cost: p > 0 ? part.cost + (whole ? turning.whole : 0) : cost,
      }
    })
  })
}

/** Pieces of one block that stand on one page, as one block. */
export function putTogether(pieces: readonly Piece[]): Block {
  const [first] = pieces
  if (!first) throw new RangeError('no piece')
  const { of, block } = first
  if (of.kind === 'table')
    return {
      ...of,
      rows: pieces.flatMap((one) => (one.block.kind === 'table' ? one.block.rows : [])),
    }
  if (of.kind === 'list')
    return {
      ...of,
      items: pieces.flatMap((one) => (one.block.kind === 'list' ? one.block.items : [])),
    }
  return pieces.length > 1 ? of : block
}

/** What turning the page between two blocks costs: what leads stays with what follows, lines to sign on with what is signed. */
function between(before: Block, block: Block): number {
  if (leads(before) || before.kind === 'boxes' || block.kind === 'blanks') return turning.never
  if (block.kind === 'figures' && before.kind === 'feet') return turning.never
  if (block.kind === 'feet') return turning.feet
  return turning.block
}

/** Whether a block says what the next one is: headings, drawings of what follows, and such beside one another. */
function leads(block: Block): boolean {
  if (block.kind === 'heading' || block.kind === 'title') return true
  if (block.kind === 'figures') return block.leads === true
  if (block.kind !== 'beside') return false
  return block.parts.some(({ blocks }) => blocks.slice(-1).some(leads))
}

/** Shorter tables and lists are not parted: the readings of one turn among them. */
const leastParted = 6

interface Part {
  readonly block: Block
  readonly height: number
  readonly opening: number
  readonly cost: number
}

function split(block: Block, room: number): Part[] {
  // few rows stay together, but for those that no page would hold
  const parted = (count: number) => count >= leastParted || blockHeight(block) > room
  if (block.kind === 'table' && parted(block.rows.length))
    return inRows(
      block.rows.map((row) => ({ ...block, rows: [row] })),
      block.rows.map((row) => rowHeight(block, row)),
      headHeight(block) + print.gap,
    )
  if (block.kind === 'list' && parted(block.items.length))
    return inRows(
      block.items.map((item) => ({ ...block, items: [item] })),
      listHeights(block),
      print.gap,
    )
  const height = blockHeight(block)
  const parts = block.kind === 'step' ? partedStep(block.step) : undefined
  if (!parts) return [{ block, height, opening: height, cost: 0 }]
  const begun: Block = { kind: 'step', step: parts[0] }
  const rest: Block = { kind: 'step', step: parts[1] }
  const opening = blockHeight(begun)
  return [
    { block: begun, height: opening, opening, cost: 0 },
    {
      block: rest,
      height: Math.max(0, height - opening),
      opening: blockHeight(rest),
      cost: turning.step,
    },
  ]
}

/** Rows of which two at least stay together, at the end of one page and at the beginning of the next. */
const inRows = (blocks: readonly Block[], heights: readonly number[], furniture: number): Part[] =>
  blocks.map((block, r) => ({
    block,
    height: (heights[r] ?? 0) + (r === 0 ? furniture : 0),
    opening: (heights[r] ?? 0) + furniture,
    cost: r < 2 || r > blocks.length - 2 ? turning.never : turning.row,
  }))
