import type { TrainDocument } from '../../src/document/schema'
import { readTrain } from '../../src/document/readTrain'
import { everyStage } from '../../src/engine/planningRun'
import { glpkSolver } from '../../src/solvers/glpk'
import { KnownTrains } from '../../src/worker/knownTrains'

const solver = await glpkSolver()
/** As a worker keeps them. */
const trains = new KnownTrains()

/** Plans a document at a share of tolerance as a worker does; with every stage, or with its prices alone. */
export function planned(document: TrainDocument, share: number, whole: boolean): void {
  const read = readTrain({ ...document, plan: { ...document.plan, share } })
  if (!read.ok) throw new Error('refused')
  const { run } = trains.of(read, solver)
  if (whole) run.answer({ ...everyStage, sure: false })
  else run.priced()
}
