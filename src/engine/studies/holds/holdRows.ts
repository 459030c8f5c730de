import type { SureAnswer } from '../../chance/answer'
import { tol } from '../../../mechanics/tolerances'
import type { Train } from '../../../mechanics/train'
import { allChoices, choiceNow, choiceOf, heldIds, looseBodies, mostBodies } from './choice'
import { holdComparisons, type HoldComparison } from './compare'
import { HoldSolver } from './holdSolver'
import { bestRows } from './bestRows'
import { rankHolds } from './rank'
import type { HoldRow } from './row'
import { whyNot } from './why'
import type { Solver } from '../../lp/solver'

/** A choice that was solved, and how many of how many that makes. */
export interface HoldProgress {
  readonly row: HoldRow
  readonly done: number
  /** Undefined while it is not known how many there will be: more bodies than every choice is solved for. */
  readonly total: number | undefined
}

/** A row as people compare it: how it stands to the others, and why it is not the first. */
export type RankedHold = HoldRow &
  HoldComparison & {
    /** What is held now. */
    readonly current: boolean
    /** A clause in small letters; empty for the first. */
    readonly why: string
    /** How sure its plan is, where somebody asked; without what would buy more, which the answer of `plan` has. */
    readonly sure?: SureAnswer
  }

export interface Holds {
  /** True when every choice was solved. */
  readonly complete: boolean
  readonly rows: readonly RankedHold[]
}

/** Most rows of a list that is not complete. */
export const mostRows = tol.mostRows

/** How a list of choices is made. */
export interface HoldOptions {
  /** Work out what binds for every row as well, which takes about as long again [true]. */
  readonly prices?: boolean
  /** Bodies up to which every choice is solved [12]. */
  readonly bodies?: number
}

/** True when so few bodies can be held or let go that every choice is solved. */
export const solvesAll = (train: Train, { bodies = mostBodies }: HoldOptions = {}): boolean =>
  looseBodies(train).length <= bodies

/**
 * Solves one choice of held bodies after the other: what is held now, nothing, each body alone, and
 * so on; beyond 12 bodies the best choice that a mixed-integer program finds and those near it. Take
 * as many as wanted: a caller that stops asking cancels the rest.
 */
export function* holdRows(
  holds: HoldSolver,
  options: HoldOptions = {},
): Generator<HoldProgress, void> {
  const { train } = holds
  const { prices = true } = options
  if (!solvesAll(train, options)) {
    let done = 0
    for (const row of bestRows(holds, prices, mostRows)) {
      done++
      yield { row, done, total: undefined }
    }
    return
  }
  const choices = allChoices(train)
  for (const [i, choice] of choices.entries())
    yield { row: holds.row(choice, prices), done: i + 1, total: choices.length }
}

/** Ranks rows and says of each how it stands to the others. */
export function rankedHolds(holds: HoldSolver, rows: readonly HoldRow[]): RankedHold[] {
  const { train } = holds
  const ranked = rankHolds(train, rows)
  const [best] = ranked
  if (!best) return []
  return holdComparisons(train, ranked).map((standing, i) => {
    const row = ranked[i] ?? best
    return {
      ...row,
      ...standing,
      current: holdsExactly(row, heldIds(train, choiceNow(train))),
      why: whyNot(holds, row, standing, best),
    }
  })
}

const holdsExactly = ({ held }: HoldRow, ids: readonly string[]): boolean =>
  held.join(' ') === ids.join(' ')

/** Every choice of held bodies, ranked; beyond 12 bodies the best 200 found. */
export const holdsOf = (train: Train, solver: Solver, options: HoldOptions = {}): Holds =>
  holdsFrom(new HoldSolver(train, solver), options)

/** The same, by a solver of choices that is there already. */
export function holdsFrom(holds: HoldSolver, options: HoldOptions = {}): Holds {
  const { train } = holds
  const rows = [...holdRows(holds, options)].map(({ row }) => row)
  const complete = solvesAll(train, options)
  return { complete, rows: rankedHolds(holds, complete ? rows : theBest(train, rows)) }
}

/** The best 200 rows of a list that is not complete, and with them always what is held now and nothing. */
export function theBest(train: Train, rows: readonly HoldRow[]): HoldRow[] {
  const always = [choiceNow(train), choiceOf(train, new Set())].map((choice) =>
    heldIds(train, choice),
  )
  const stays = (row: HoldRow) => always.some((ids) => holdsExactly(row, ids))
  const others = rankHolds(train, rows).filter((row) => !stays(row))
  const kept = rows.filter(stays)
  return [...kept, ...others.slice(0, mostRows - kept.length)]
}
