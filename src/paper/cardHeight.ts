import { besideName, type PaperFootCard } from './page'
import { print, wideCards } from './print'
import { textWidth } from './size'
import { linesHeight, linesOf, textLength } from './textSize'

/** Inside distance of a card (mm), and what its frame takes up and down. */
const inset = 2.9
const frame = 4.4

/** Height of a foot's card where so many stand side by side (mm). */
export function cardHeight(card: PaperFootCard, columns: number): number {
  const width = (textWidth - 2 * (columns - 1)) / columns - 2 * inset
  const lines = (
    text: string | undefined,
    points: number,
    room = width,
    leading: number = print.leading,
  ): number =>
    text === undefined || text === ''
      ? 0
      : linesHeight(linesOf(text, points, room, points > print.plain), points, leading)
  const wide = columns <= wideCards
  const act = wide ? print.act : print.actNarrow
  const beside = width - (wide ? print.drawn : card.figure.width) - 2
  const name = textLength(card.name, print.foot, true)
  const head = Math.max(
    lines(card.name, print.foot, width, 1.1),
    lines(besideName(card), print.small, Math.max(width - name - 2, 12)),
  )
  const slide = (room: number) =>
    lines(card.slide, act, room, 1.12) +
    lines(card.toward, print.toward, room, 1.12) +
    lines(card.along, print.toward, room, 1.12)
  const room = (across: number) => lines(card.room, print.small, across, 1.2)
  const words =
    lines(card.shim, act, beside, 1.12) +
    lines(card.pack, print.plain, beside) +
    lines(card.recipe, print.plain, beside)
  return Math.max(
    print.card,
    frame +
      head +
      1.9 +
      Math.max(
        card.figure.height + (wide ? room(print.drawn) : 0),
        words + (wide ? slide(beside) : 0),
      ) +
      (wide ? 0 : slide(width) + room(width)) +
      lines(card.bound.join(', '), print.plain) +
      Math.ceil(card.actuals.length / (wide ? 4 : 2)) * (print.actual + 1),
  )
}
