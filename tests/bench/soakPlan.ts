import type { TrainDocument } from '../../src/document/schema'
import { readTrain } from '../../src/document/readTrain'
import { everyStage } from '../../src/engine/planningRun'
import { glpkSolver } from '../../src/solvers/glpk'
import { studiedTrains } from '../../src/worker/studiedTrains'

const solver = await glpkSolver()

/** Plans a document at a share of tolerance as a worker does; with every stage, or with its prices alone. */
export function planned(document: TrainDocument, share: number, whole: boolean): void {
  const read = readTrain({ ...document, plan: { ...document.plan, share } })
  if (!read.ok) throw new Error('refused')
  const { run } = studiedTrains.of(read, solver)
  if (whole) run.answer({ ...everyStage, sure: false })
  else run.priced()
}
