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
import { Budget } from '../../lp/budget'
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
  /** The work allowed ran out before the list, or what is said of it, came to its end; left out where it did. */
  readonly ranOut?: true
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
  /** How many times the usual work it may take [1]. */
  readonly work?: number
}

/** True when so few bodies can be held or let go that every choice is solved. */
export const solvesAll = (train: Train, { bodies = mostBodies }: HoldOptions = {}): boolean =>
  looseBodies(train).length <= bodies

/**
 * Solves one choice of held bodies after the other: what is held now, nothing, each body alone, and
 * so on; beyond 12 bodies the best choice that a mixed-integer program finds and those near it. Take
 * as many as wanted: a caller that stops asking cancels the rest.
 * @returns whether the list came to its end within the budget of its solver
 */
export function* holdRows(
  holds: HoldSolver,
  options: HoldOptions = {},
): Generator<HoldProgress, boolean> {
  const { train, budget } = holds
  const { prices = true } = options
  if (!solvesAll(train, options)) {
    let done = 0
    const pieces = budget.pieces(bestRows(holds, prices, mostRows))
    for (;;) {
      const next = pieces.next()
      if (next.done) return next.value
      done++
      yield { row: next.value, done, total: undefined }
    }
  }
  const choices = allChoices(train)
  for (const [i, choice] of choices.entries()) {
    const row = budget.attempt(() => holds.row(choice, prices))
    if (!row) return false
    yield { row, done: i + 1, total: choices.length }
  }
  return true
}

/** Ranks rows and says of each how it stands to the others. */
export function rankedHolds(holds: HoldSolver, rows: readonly HoldRow[]): RankedHold[] {
  const { train } = holds
  const ranked = rankHolds(train, rows)
  const [best] = ranked
  if (!best) return []
  // what a list that grows says meanwhile takes nothing from it
  const apart = holds.within(holds.budget.anew())
  return holdComparisons(train, ranked).map((standing, i) => {
    const row = ranked[i] ?? best
    const reason = apart.budget.attempt(() => ({ why: whyNot(apart, row, standing, best) }))
    return {
      ...row,
      ...standing,
      current: holdsExactly(row, heldIds(train, choiceNow(train))),
      why: reason?.why ?? whyOpen,
    }
  })
}

/** Said of an impossible choice where the work allowed for its reason ran out. */
const whyOpen = 'why it is impossible was not worked out: the work allowed for it ran out'

const holdsExactly = ({ held }: HoldRow, ids: readonly string[]): boolean =>
  held.join(' ') === ids.join(' ')

/** Every choice of held bodies, ranked; beyond 12 bodies the best 200 found. */
export const holdsOf = (train: Train, solver: Solver, options: HoldOptions = {}): Holds =>
  holdsFrom(new HoldSolver(train, holdsBudget(solver, options.work)), options)

/** The budget of work of a list of choices. */
export const holdsBudget = (solver: Solver, work = 1): Budget =>
  new Budget(solver, work * tol.holdsWork)

/** The same, by a solver of choices that is there already. */
export function holdsFrom(holds: HoldSolver, options: HoldOptions = {}): Holds {
  const { train } = holds
  const rows: HoldRow[] = []
  const choices = holdRows(holds, options)
  for (;;) {
    const next = choices.next()
    if (!next.done) {
      rows.push(next.value.row)
      continue
    }
    const complete = solvesAll(train, options) && next.value
    const listed = rankedHolds(holds, complete ? rows : theBest(train, rows))
    return { complete, ...(!next.value && { ranOut: true }), rows: listed }
  }
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
