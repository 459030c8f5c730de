import type { Block, Chapter, Page, PaperSize } from './page'
import { piecesOf, putTogether, turning, type Piece } from './pieces'
import { print } from './print'
import { headAside, headTitle, roomHeight } from './size'
import { linesHeight, linesOf } from './textSize'

/** No page but the last is less full than this part of it, where there is a way. */
const leastFill = 1 / 3

/**
 * Cuts chapters into pages: as few as there can be, and of all ways to cut those the one that turns the page in the best
 * places. They follow one another down the page. Tables and lists are parted between rows, steps before what must be seen
 * after them; headings never leave what follows, nor do lines to sign on what is signed.
 * @param aside what stands at the right of every page's head
 */
export function paginate(chapters: readonly Chapter[], size: PaperSize, aside = ''): Page[] {
  const room = roomHeight(size)
  const pieces = chapters.flatMap((chapter) => piecesOf(chapter, room))
  const starts = cheapest(pieces, (first) => room - headMore(titleOf(first), aside))
  return starts.map((start, p) => pageOf(pieces.slice(start, starts[p + 1])))
}

/** Where the pages of the cheapest cut begin: the shortest way from the first piece past the last, a page at a time. */
function cheapest(pieces: readonly Piece[], roomOf: (first: Piece) => number): number[] {
  const ways: (Way | undefined)[] = [{ cost: 0, from: -1 }]
  for (let start = 0; start < pieces.length; start++) {
    const way = ways[start]
    const first = pieces[start]
    if (!way || !first) continue
    const room = roomOf(first)
    let used = 0
    for (let end = start + 1; end <= pieces.length; end++) {
      const piece = pieces[end - 1]
      if (!piece) break
      used += end === start + 1 ? piece.opening : piece.height
      // what is taller than any page stands alone and runs on, rather than being cut
      if (used > room && end > start + 1) break
      const cost = way.cost + pageCost(used / room, pieces[end])
      const known = ways[end]
      if (!known || cost < known.cost) ways[end] = { cost, from: start }
    }
  }
  const starts: number[] = []
  for (let at = ways[pieces.length]?.from ?? -1; at >= 0; at = ways[at]?.from ?? -1)
    starts.unshift(at)
  return starts
}

interface Way {
  readonly cost: number
  /** Where its last page begins. */
  readonly from: number
}

/** @param next what the page after it begins with; none after the last, which may be as empty as it likes */
function pageCost(fill: number, next: Piece | undefined): number {
  if (!next) return turning.page
  const empty = Math.max(0, 1 - fill)
  return turning.page + next.cost + (fill < leastFill ? 3 * turning.page : 0) + 4 * empty ** 2
}

function pageOf(pieces: readonly Piece[]): Page {
  const [first] = pieces
  if (!first) throw new RangeError('a page of nothing')
  const { section } = first.chapter
  const groups: Piece[][] = []
  for (const piece of pieces) {
    const last = groups.at(-1)
    if (last && piece.goesOn) last.push(piece)
    else groups.push([piece])
  }
  const blocks = groups.flatMap((group, g): Block[] => {
    const [own] = group
    if (!own) return []
    const over: Block[] =
      own.first && g > 0
        ? [{ kind: 'title', text: own.chapter.title }]
        : own.heading && g === 0
          ? [own.heading]
          : []
    return [...over, putTogether(group)]
  })
  return { section, title: titleOf(first), blocks }
}

/** The title of a page that begins with a piece. */
const titleOf = ({ first, chapter: { title } }: Piece): string =>
  first ? title : `${title} (continued)`

/** By how much a page's head is taller than two lines of small print: of a title that folds, or of more beside it (mm). */
function headMore(title: string, aside: string): number {
  const two = linesHeight(2, print.small)
  const own = linesHeight(linesOf(title, print.title, headTitle, true), print.title, 1.15)
  const beside = linesHeight(linesOf(aside, print.small, headAside, true), print.small)
  return Math.max(0, own - two, beside - two)
}
