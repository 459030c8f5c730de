import { ChanceStudy } from '../engine/chance/chanceStudy'
import type { WantedAnswer } from '../engine/chance/answer'
import { chanceOfHold, ownShares } from '../engine/sureHolds'
import { holdsBudget, holdsFrom, rankedHolds, solvesAll } from '../engine/studies/holds/holdRows'
import { HoldSolver } from '../engine/studies/holds/holdSolver'
import type { Train } from '../mechanics/train'
import { holdList, type HoldList } from '../text/holdList'
import { everyStage, PlanningRun, type ReadTrain } from '../engine/planningRun'
import type { PlanAnswer } from '../engine/fieldwork/answer'
import type { Solver } from '../engine/lp/solver'
import type { Paper } from './page'
import type { PaperJob } from './job'
import { paperOf, type PaperSettings } from './paperOf'

/** A work sheet with the answer it was made from, or why there is none. */
export type WorkSheet =
  | {
      readonly status: 'planned' | 'in-tolerance' | 'impossible'
      readonly answer: PlanAnswer
      /** What either print can be laid out from. */
      readonly job: PaperJob
      readonly paper: Paper
    }
  | { readonly status: 'stopped'; readonly why: string }

/** With more bodies than this the other choices of what to hold are left out: paper must not wait. */
const mostBodies = 7

/** Plans a train that was read with all that belongs on paper, and lays it out. */
export function workSheet(read: ReadTrain, solver: Solver, settings: PaperSettings): WorkSheet {
  const { train } = read
  const run = new PlanningRun(read, solver)
  const answer = run.answer({ ...everyStage, sure: true })
  if (answer.status === 'stopped' || answer.status === 'unproven')
    return { status: 'stopped', why: `no sheet without a plan that holds: ${answer.why}` }
  const few = solvesAll(train, { bodies: mostBodies })
  const list = few && { holds: choicesOf(train, run.wanted, solver) }
  const job = { ...read, train: run.train, answer, ...list }
  return { status: answer.status, answer, job, paper: paperOf(job, settings) }
}

/** Choices of held bodies as the sheet lists them, each with the chance of its plan. */
function choicesOf(train: Train, wanted: WantedAnswer | undefined, solver: Solver): HoldList {
  const budget = holdsBudget(solver)
  const holds = new HoldSolver(train, budget)
  const study = new ChanceStudy(train, holds.found)
  const listed = holdsFrom(holds, { prices: false })
  const apart = holds.within(budget.anew())
  const own = wanted && ownShares(apart, study, listed.rows, wanted, { prices: false })
  const rows = own ? rankedHolds(holds, own.rows) : listed.rows
  const ranOut = listed.ranOut ?? own?.ranOut
  const list = { complete: listed.complete, ...(ranOut && { ranOut }), rows }
  return holdList(train, list, (row) => chanceOfHold(apart, study, row))
}
