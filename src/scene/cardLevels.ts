import type { FootFacts } from './footFacts'
import { lineMark, type Mark } from './drawings/marks'
import { spread } from './spread'

/** Height of the strip in which leaders run from feet to cards (px). */
export const leaderHeight = 16
const gap = 8
const margin = 4

/** A held foot says one word; a foot that moves needs room for its side's name, and takes what there is. */
const heldWidth = 72
const [narrowest, widest] = [96, 150]
/** The most that a held one takes of what moving ones leave: the name of its machine stands on one line. */
const heldWidest = 104

/** How wide a foot's card is (px). */
export type WidthOf = (facts: FootFacts) => number

const widthOf =
  (moving: number, held: number): WidthOf =>
  (facts) =>
    facts.held ? held : moving

/** As narrow as a card may be (px). */
export const narrowestOf = ({ held }: { readonly held: boolean }): number =>
  held ? heldWidth : narrowest

/** A foot on the plan that wants a card; its place on the page (px). */
export interface StandingFoot {
  readonly facts: FootFacts
  readonly x: number
  readonly y: number
  readonly far: boolean
}

/** Room that cards of these widths take on one level, and on two (px). */
export function levelsNeed(widths: readonly number[], levels: 1 | 2): number {
  const side = (some: readonly number[]) =>
    some.reduce((sum, width) => sum + width + gap, 2 * margin - gap)
  if (levels === 1) return side(widths)
  return Math.max(...[0, 1].map((k) => side(widths.filter((_, i) => i % 2 === k))))
}

/** The widest that cards of moving feet may be on a page so wide (px): on one level if they fit there, else on two. */
export function movingWidth(sides: readonly (readonly StandingFoot[])[], page: number): WidthOf {
  const fits = (feet: readonly StandingFoot[]): number => {
    const held = feet.filter(({ facts }) => facts.held).length
    const room = page - 2 * margin - held * heldWidth - (feet.length - 1) * gap
    return room / Math.max(1, feet.length - held)
  }
  const every = (feet: readonly StandingFoot[], k: number) => feet.filter((_, i) => i % 2 === k)
  const single = Math.min(...sides.map(fits))
  const double = Math.min(...sides.flatMap((feet) => [fits(every(feet, 0)), fits(every(feet, 1))]))
  const width = single >= narrowest ? single : Math.max(narrowest, double)
  const left = (feet: readonly StandingFoot[]): number => {
    const held = feet.filter(({ facts }) => facts.held).length
    const room = page - 2 * margin - (feet.length - held) * widest - (feet.length - 1) * gap
    return room / Math.max(1, held)
  }
  const held = single >= widest ? Math.min(heldWidest, ...sides.map(left)) : heldWidth
  return widthOf(Math.floor(Math.min(widest, width)), Math.floor(held))
}

interface Placed {
  readonly cards: readonly {
    readonly facts: FootFacts
    readonly left: number
    readonly width: number
  }[]
  readonly leaders: readonly Mark[]
  readonly passing: readonly number[]
}

/** How many cards reach over another body than their own by more than half of themselves: past the middle to its next foot. */
function astray(cards: Placed['cards'], feet: readonly StandingFoot[]): number {
  const edges = feet.slice(1).flatMap(({ facts, x }, i) => {
    const before = feet[i]
    return before && before.facts.body !== facts.body
      ? [{ left: before.facts.body, right: facts.body, x: (before.x + x) / 2 }]
      : []
  })
  return cards.filter(({ facts, left, width }) =>
    edges.some((edge) =>
      edge.left === facts.body
        ? left + width / 2 > edge.x
        : edge.right === facts.body && left + width / 2 < edge.x,
    ),
  ).length
}

/**
 * One level where all cards fit side by side on a page so wide (px) without lying over another body than their own;
 * otherwise every other card steps back to a second.
 */
export function levelsOf(
  feet: readonly StandingFoot[],
  page: number,
  far: boolean,
  width: WidthOf,
): Placed[] {
  const widths = feet.map(({ facts }) => width(facts))
  const needed = widths.reduce((sum, width) => sum + width + gap, 0)
  const place = (some: readonly StandingFoot[]) => {
    const cards = some.map(({ facts, x }) => ({ want: x, width: width(facts) }))
    const lefts = spread(cards, gap, margin, page - margin)
    return some.map((foot, i) => ({
      foot,
      facts: foot.facts,
      left: lefts[i] ?? 0,
      width: width(foot.facts),
    }))
  }
  const leader = (from: number, to: number): Mark =>
    far
      ? lineMark(to, 0, from, leaderHeight, 'leader')
      : lineMark(from, 0, to, leaderHeight, 'leader')
  const middle = (card: { left: number; width: number }) => card.left + card.width / 2
  const first = place(feet.filter((_, i) => i % 2 === 0))
  const second = place(feet.filter((_, i) => i % 2 === 1))
  if (needed - gap <= page - 2 * margin) {
    const cards = place(feet)
    const away = astray(cards, feet)
    if (away === 0 || away <= astray([...first, ...second], feet))
      return [
        { cards, leaders: cards.map((card) => leader(card.foot.x, middle(card))), passing: [] },
      ]
  }
  // every second card's leader passes between two first ones, as straight as they allow
  const passing = second.map(({ foot }, i) => {
    const [before, after] = [first[i], first[i + 1]]
    const low = before ? before.left + before.width + gap / 2 : margin / 2
    const high = after ? after.left - gap / 2 : Math.max(low, foot.x)
    return Math.min(Math.max(foot.x, low), high)
  })
  return [
    {
      cards: first,
      leaders: [
        ...first.map((card) => leader(card.foot.x, middle(card))),
        ...second.map((card, i) => leader(card.foot.x, passing[i] ?? card.foot.x)),
      ],
      passing,
    },
    {
      cards: second,
      leaders: second.map((card, i) => leader(passing[i] ?? card.foot.x, middle(card))),
      passing: [],
    },
  ]
}
