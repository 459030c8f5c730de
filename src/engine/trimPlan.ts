import { readTrain } from '../document/readTrain'
import type { TrainDocument } from '../document/schema'
import type { TrimPlanAnswer } from './fieldwork/hotCheck/answer'
import type { Solver } from './lp/solver'
import { movedBodies } from './plan/moves'
import { PlanningRun } from './planningRun'
import { madeOf } from './rounding/answer'

/** The least trim of the train with the growth that was found, rounded where the file names a store of shims. */
export function trimPlan(corrected: TrainDocument, solver: Solver): TrimPlanAnswer {
  const read = readTrain(corrected)
  if (!read.ok) throw new RangeError(`corrected growth is refused: ${JSON.stringify(read.refused)}`)
  const run = new PlanningRun(read, solver)
  const plan = run.plan()
  switch (plan.status) {
    case 'planned': {
      const made = madeOf(run.rounding())
      const rounded = made?.status === 'rounded' ? made : undefined
      const { total, worstShare } = rounded ?? plan
      return {
        status: plan.status,
        rounded: rounded !== undefined,
        bodies: movedBodies(read.train, rounded ?? plan).map(({ id }) => id),
        total,
        worstShare,
      }
    }
    case 'in-tolerance':
      return { status: plan.status, rounded: false, bodies: [], worstShare: plan.worstShare }
    case 'impossible':
      return { status: plan.status, rounded: false, bodies: [], floor: plan.floor }
    case 'unproven':
    case 'stopped':
      return { status: plan.status, rounded: false, bodies: [] }
  }
}
