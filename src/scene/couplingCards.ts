import { axialShown } from './axialShown'
import { axialTable, type AxialTable } from '../engine/plan/axialTable'
import type { Train } from '../mechanics/train'
import type { DrawnAnswer } from './drawnAnswer'
import { couplingFacts, type CouplingFacts } from './couplingFacts'
import type { Figures } from './figures'
import { lineMark, poly, type Mark } from './drawings/marks'
import { columnsFitting } from './readingColumns'
import { readingTables, type ReadingTable } from './readingTable'
import { spread } from './spread'
import type { XScale } from './xScale'

/** A coupling's card: as near under its coupling as its neighbours allow (px). */
export interface CouplingCard {
  readonly facts: CouplingFacts
  readonly tables: readonly ReadingTable[]
  readonly left: number
  readonly width: number
}

export interface CouplingsScene {
  readonly cards: readonly CouplingCard[]
  /** From the flex planes down to the cards, in a strip `couplingLeaders` high. */
  readonly leaders: readonly Mark[]
  /** Every share that the cards draw, for the one scale of tolerance used that they stand on. */
  readonly shares: readonly number[]
  /** Gaps between shaft ends through the train, where any was entered. */
  readonly axial?: AxialTable
}

export const couplingLeaders = 22
const gap = 16
const margin = 4
const [narrowest, widest] = [200, 440]

/** Narrowest page that holds a card for every coupling. */
export const couplingsNeed = (train: Train): number =>
  train.couplings.length * (narrowest + gap) + 2 * margin

/** The readings of every coupling, which no drag changes. */
export const tablesOf = (train: Train): ReadingTables =>
  train.couplings.map((coupling) => readingTables(train, coupling))

type ReadingTables = readonly ReturnType<typeof readingTables>[]

export function couplingsScene(
  train: Train,
  answer: DrawnAnswer,
  figures: Figures,
  scale: XScale,
  tables: ReadingTables = tablesOf(train),
): CouplingsScene {
  const count = Math.max(1, train.couplings.length)
  const room = (scale.width - 2 * margin + gap) / count - gap
  const width = Math.floor(Math.min(widest, Math.max(narrowest, room)))
  const facts = couplingFacts(train, answer, figures)
  const lefts = spread(
    train.couplings.map(({ mid }) => ({ want: scale.at(mid), width })),
    gap,
    margin,
    scale.width - margin,
  )
  const shares = facts.flatMap(({ rows }) =>
    rows.flatMap(({ after, asFound }) => [asFound.share, ...(after ? [after.share] : [])]),
  )
  const axial = axialShown(train, answer)
  return {
    ...(axial && { axial: axialTable(train, axial) }),
    shares: [answer.share, ...shares],
    cards: facts.map((own, c) => ({
      facts: own,
      tables: (tables[c] ?? []).flatMap((table) => columnsFitting(table, width)),
      left: lefts[c] ?? 0,
      width,
    })),
    leaders: train.couplings.flatMap(({ p, q }, c) => {
      const [from, to] = [scale.at(p), scale.at(q)]
      const left = lefts[c] ?? 0
      const middle = (from + to) / 2
      // a leader lands on its card's top edge, straight down where it can
      const end = Math.min(Math.max(middle, left + 10), left + width - 10)
      return [
        lineMark(from - 2, 0.5, to + 2, 0.5, 'edge'),
        poly(
          [
            [middle, 0],
            [middle, 8],
            [end, couplingLeaders - 6],
            [end, couplingLeaders],
          ],
          'leader',
          false,
        ),
        lineMark(left, couplingLeaders - 0.5, left + width, couplingLeaders - 0.5, 'edge'),
      ]
    }),
  }
}
