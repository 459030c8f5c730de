import { holdsOf, solvesAll } from '../engine/studies/holds/holdRows'
import { holdList } from '../text/holdList'
import { PlanningRun, type ReadTrain } from '../engine/planningRun'
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
  const answer = run.answer({ rounding: true, reasons: true, work: true })
  if (answer.status === 'stopped' || answer.status === 'unproven')
    return { status: 'stopped', why: `no sheet without a plan that holds: ${answer.why}` }
  const few = solvesAll(train, { bodies: mostBodies })
  const holds = few ? holdsOf(train, solver, { prices: false }) : undefined
  const list = holds && { holds: holdList(train, holds.rows, holds.complete) }
  const job = { ...read, answer, ...list }
  return { status: answer.status, answer, job, paper: paperOf(job, settings) }
}
