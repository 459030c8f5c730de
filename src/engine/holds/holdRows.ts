import type { Train } from '../train/model'
import { allChoices, looseBodies, mostBodies } from './choice'
import { standings, type Standing } from './compare'
import { HoldSolver } from './holdSolver'
import { bestRows } from './bestRows'
import { rankHolds } from './rank'
import type { HoldRow } from './row'
import { whyNot } from './why'
import type { Solver } from '../solver/solver'

/** A choice that was solved, and how many of how many that makes. */
export interface HoldProgress {
  readonly row: HoldRow
  readonly done: number
  /** Undefined while it is not known how many there will be: more bodies than every choice is solved for. */
  readonly total: number | undefined
}

/** A row as people compare it: how it stands to the others, and why it is not the first. */
export interface RankedHold extends HoldRow, Standing {
  /** What is held now. */
  readonly current: boolean
  /** A clause in small letters; empty for the first. */
  readonly why: string
}

export interface Holds {
  /** True when every choice was solved. */
  readonly complete: boolean
  readonly rows: readonly RankedHold[]
}

/** Most rows of a list that is not complete. */
export const mostRows = 200

/** True when so few bodies can be held or let go that every choice is solved. */
export const solvesAll = (train: Train): boolean => looseBodies(train).length <= mostBodies

/**
 * Solves one choice of held bodies after the other: what is held now, nothing, each body alone, and
 * so on; beyond 12 bodies the best choice that a mixed-integer program finds and those near it. Take
 * as many as wanted: a caller that stops asking cancels the rest.
 * @param prices work out what binds for every row as well, which takes about as long again
 */
export function* holdRows(holds: HoldSolver, prices = true): Generator<HoldProgress, void> {
  const { train } = holds
  if (!solvesAll(train)) {
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

/**
 * Ranks rows and says of each how it stands to the others.
 * @param complete whether these are all the choices there are
 */
export function rankedHolds(holds: HoldSolver, rows: readonly HoldRow[]): RankedHold[] {
  const { train } = holds
  const ranked = rankHolds(train, rows)
  const [best] = ranked
  if (!best) return []
  const now = train.bodies.filter(({ held }) => held).map(({ id }) => id)
  return standings(train, ranked).map((standing, i) => {
    const row = ranked[i] ?? best
    return {
      ...row,
      ...standing,
      current: row.held.join(' ') === now.join(' '),
      why: whyNot(holds, row, standing, best),
    }
  })
}

/** Every choice of held bodies, ranked; beyond 12 bodies the best 200 found. */
export function holdsOf(train: Train, solver: Solver, prices = true): Holds {
  const holds = new HoldSolver(train, solver)
  const rows = [...holdRows(holds, prices)].map(({ row }) => row)
  const complete = solvesAll(train)
  const kept = complete ? rows : rankHolds(train, rows).slice(0, mostRows)
  return { complete, rows: rankedHolds(holds, kept) }
}
