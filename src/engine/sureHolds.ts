import { chanceText } from '../language/chanceText'
import { tol } from '../mechanics/tolerances'
import type { Motion } from '../mechanics/motion'
import type { Train } from '../mechanics/train'
import type { HoldRow } from './studies/holds/row'
import { choiceNow, choiceOf, heldIds, type HoldChoice } from './studies/holds/choice'
import {
  holdsBudget,
  holdsFrom,
  rankedHolds,
  type Holds,
  type HoldOptions,
} from './studies/holds/holdRows'
import { HoldSolver } from './studies/holds/holdSolver'
import { rankHolds } from './studies/holds/rank'
import type { Solver } from './lp/solver'
import { atChance } from './atChance'
import type { WantedAnswer } from './chance/answer'
import { ChanceStudy } from './chance/chanceStudy'
import { chanceOf } from './chance/interval'
import { sureOfPlan } from './chance/sureAnswer'
import { ownShare } from './ownShare'

/**
 * Every choice of held bodies, ranked, each with the chance of its plan by the same draws; where a chance is asked
 * for, each at its own share of tolerance.
 * @param train as it was read
 */
export function sureHolds(train: Train, solver: Solver, options: HoldOptions = {}): Holds {
  const budget = holdsBudget(solver, options.work)
  const holds = new HoldSolver(train, budget)
  const study = new ChanceStudy(train, holds.found)
  const asFound = sureOfPlan(study)
  const { wanted } = atChance(train, solver, options.work)
  const listed = holdsFrom(holds, options)
  const own = wanted && ownShares(holds.within(budget.anew()), study, listed.rows, wanted, options)
  const rows = own ? rankedHolds(holds, own.rows) : listed.rows
  const apart = holds.within(budget.anew())
  let ranOut = listed.ranOut ?? own?.ranOut ?? false
  const told = rows.map((row) => {
    const plan = apart.budget.attempt(() => ({ motions: motionsOfHold(apart, row) }))
    if (!plan) ranOut = true
    return { ...row, ...(plan && { sure: sureOrAsFound(plan.motions) }) }
  })
  return { complete: listed.complete, ...(ranOut && { ranOut }), rows: told }

  function sureOrAsFound(motions: readonly Motion[] | undefined) {
    return motions ? sureOfPlan(study, motions) : asFound
  }
}

/** Rows at their own shares as far as the budget goes; those behind stay as they are at the share asked for. */
export function ownShares(
  holds: HoldSolver,
  study: ChanceStudy,
  rows: readonly HoldRow[],
  wanted: WantedAnswer,
  { prices }: HoldOptions,
): { rows: HoldRow[]; ranOut?: true } {
  const own: HoldRow[] = []
  const pieces = holds.budget.pieces(ownRows(holds, study, rows, wanted, prices))
  for (;;) {
    const next = pieces.next()
    if (!next.done) {
      own.push(next.value)
      continue
    }
    if (next.value) return { rows: own }
    return { rows: [...own, ...rankHolds(holds.train, rows).slice(own.length)], ranOut: true }
  }
}

/**
 * Rows at the share asked for, each planned anew at the share at which it reaches the chance asked for: the best
 * ranked ones, with what is held now and nothing held always among them. The others stay as they are, with their
 * chance. A row at a time, so that a caller can stop asking.
 * @param now what came of the choice that is held now
 */
export function* ownRows(
  holds: HoldSolver,
  study: ChanceStudy,
  rows: readonly HoldRow[],
  now: WantedAnswer,
  prices = true,
): Generator<HoldRow, void> {
  const { train } = holds
  const always = [choiceNow(train), choiceOf(train, new Set())].map((choice) =>
    heldIds(train, choice).join(' '),
  )
  for (const [i, row] of rankHolds(train, rows).entries()) {
    const motions = motionsOfHold(holds, row)
    if (!motions) {
      yield row
      continue
    }
    const ids = row.held.join(' ')
    const choice = choiceOfRow(train, row)
    const chanceOfMotions = (moved: readonly Motion[]) =>
      study.good(study.judged(moved)).all / study.draws
    if (i >= tol.mostOwnShares && !always.includes(ids)) {
      const all = chanceOfMotions(motions)
      const { chance, asked } = now
      const reached = all >= chance
      yield { ...row, wanted: { chance, reached, share: asked, asked, all, looked: false } }
      continue
    }
    const wanted =
      ids === always[0] ? now : ownShare(holds, study, choice, row.floor ?? train.plan.share)
    const own = wanted.share === wanted.asked ? row : holds.at(wanted.share).row(choice, prices)
    const moved = motionsOfHold(holds, { ...own, wanted: { ...wanted, all: 0 } })
    yield moved ? { ...own, wanted: { ...wanted, all: chanceOfMotions(moved) } } : own
  }
}

/** The chance of the plan of a choice as people read it; undefined where it has none. */
export function chanceOfHold(
  holds: HoldSolver,
  study: ChanceStudy,
  row: HoldRow,
): string | undefined {
  const plan = holds.budget.attempt(() => ({ motions: motionsOfHold(holds, row) }))
  if (!plan?.motions) return undefined
  const { motions } = plan
  return chanceText(chanceOf(study.good(study.judged(motions)).all, study.draws))
}

function choiceOfRow(train: Train, row: HoldRow): HoldChoice {
  const held = new Set(row.held)
  return choiceOf(train, new Set(train.bodies.flatMap(({ id }, b) => (held.has(id) ? [b] : []))))
}

/** Own motions of the plan of a row, at the share that it has; undefined where it has none. */
function motionsOfHold(holds: HoldSolver, row: HoldRow): readonly Motion[] | undefined {
  if (row.cost === undefined) return undefined
  const { train } = holds
  return holds.at(row.wanted?.share ?? train.plan.share).motionsOf(choiceOfRow(train, row))
}
