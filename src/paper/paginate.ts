import { blockHeight, headHeight, listHeights, rowHeight } from './blockHeight'
import type { Block, Chapter, Page, PaperSize } from './page'
import { print } from './print'
import { roomHeight } from './size'

/** A page that is less full than this part of it takes the beginning of the next chapter, whatever that is. */
const leastFill = 1 / 3

/**
 * Cuts chapters into pages, one after the other with no page left nearly empty: lists and tables between their rows,
 * headings never from what follows.
 */
export function paginate(chapters: readonly Chapter[], size: PaperSize): Page[] {
  const cutter = new Cutter(roomHeight(size))
  for (const chapter of chapters) cutter.add(chapter)
  return cutter.pages.filter(({ blocks }) => blocks.length > 0)
}

interface Sheet {
  readonly section: Chapter['section']
  readonly title: string
  readonly blocks: Block[]
}

/** Fills pages from the top; `used` is how far the last one is filled (mm). */
class Cutter {
  readonly pages: Sheet[] = []
  private used = 0

  constructor(private readonly room: number) {}

  add(chapter: Chapter): void {
    if (chapter.blocks.length === 0) return
    const title: Block = { kind: 'title', text: chapter.title }
    const waiting = [...chapter.blocks]
    if (this.pages.length === 0 || this.turns(chapter, title)) this.turn(chapter, chapter.title)
    else waiting.unshift(title)
    this.fill(chapter, waiting)
  }

  /** Whether a chapter begins a page of its own. */
  private turns({ blocks, whole }: Chapter, title: Block): boolean {
    const left = this.room - this.used
    const all = [title, ...blocks].reduce((sum, block) => sum + blockHeight(block), 0)
    if (all <= left) return false
    if (blockHeight(title) + followers(title, blocks) > left) return true
    // what no page holds whole is parted one way or the other
    return whole === true && all <= this.room && this.used >= leastFill * this.room
  }

  private turn({ section }: Chapter, title: string): void {
    this.pages.push({ section, title, blocks: [] })
    this.used = 0
  }

  private fill(chapter: Chapter, waiting: Block[]): void {
    let last: Heading | undefined
    const turn = () => {
      this.turn(chapter, `${chapter.title} (continued)`)
    }
    for (let block = waiting.shift(); block !== undefined; block = waiting.shift()) {
      const page = this.pages.at(-1)?.blocks ?? []
      const height = blockHeight(block)
      if (block.kind === 'heading') last = block
      if (this.used + height + followers(block, waiting) <= this.room) {
        page.push(block)
        this.used += height
        continue
      }
      const parts = split(block, this.room - this.used)
      if (parts) {
        page.push(parts[0])
        waiting.unshift(...again(last), parts[1])
        turn()
      } else if (this.used > 0) {
        waiting.unshift(block)
        turn()
      } else {
        // taller than any page: it stands alone and runs on, rather than being cut
        page.push(block)
        this.used = this.room
      }
    }
  }
}

type Heading = Extract<Block, { kind: 'heading' }>

/** Whatever goes on over the page says there what it is. */
const again = (heading: Heading | undefined): Block[] =>
  heading ? [{ kind: 'heading', text: heading.text, aside: 'continued' }] : []

/** What must fit under a title, a heading, or drawings that belong to what follows, for it to stand there. */
function followers(block: Block, waiting: readonly Block[]): number {
  const leads = block.kind === 'figures' && block.leads === true
  if (block.kind !== 'heading' && block.kind !== 'title' && !leads) return 0
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
    const count = fitting(listHeights(block), room - print.gap)
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
    return (
      listHeights(block)
        .slice(0, 2)
        .reduce((sum, height) => sum + height, 0) + print.gap
    )
  return blockHeight(block)
}
