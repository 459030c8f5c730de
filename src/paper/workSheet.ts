import { withReasons } from '../engine/withReasons'
import { holdsOf, solvesAll } from '../engine/studies/holds/holdRows'
import { holdList } from '../text/holdList'
import { planRead } from '../engine/planTrain'
import type { PlanAnswer } from '../engine/work/answer'
import { withReady } from '../engine/withReady'
import type { Solver } from '../engine/lp/solver'
import { withSteps } from '../engine/withSteps'
import type { TrainDocument } from '../document/schema'
import type { Train } from '../mechanics/train'
import type { Paper } from './page'
import { paperOf, type PaperSettings } from './paperOf'

/** A work sheet with the answer it was made from, or why there is none. */
export type WorkSheet =
  | {
      readonly status: 'planned' | 'in-tolerance' | 'impossible'
      readonly answer: PlanAnswer
      readonly paper: Paper
    }
  | { readonly status: 'stopped'; readonly why: string }

/** With more bodies than this the other choices of what to hold are left out: paper must not wait. */
const mostBodies = 7

/** Plans a train that was read with all that belongs on paper, and lays it out. */
export function workSheet(
  read: { readonly document: TrainDocument; readonly train: Train },
  solver: Solver,
  settings: PaperSettings,
): WorkSheet {
  const { train } = read
  const plan = planRead(train, solver, { prices: false, packs: true })
  const answer = withSteps(read, withReady(read, withReasons(read, plan, solver), solver))
  const { status } = answer
  if (status === 'stopped' || status === 'unproven')
    return { status: 'stopped', why: `no sheet without a plan that holds: ${answer.why ?? status}` }
  const few = solvesAll(train, { bodies: mostBodies })
  const holds = few ? holdsOf(train, solver, { prices: false }) : undefined
  const list = holds && { holds: holdList(train, holds.rows, holds.complete) }
  return { status, answer, paper: paperOf({ ...read, answer, ...list }, settings) }
}
