/**
 * What `import ... from 'holdfast'` gives: a train read, and the run that plans it. All that is public stands here and in
 * `solver.ts`; a test keeps the list.
 */
export { readTrain, readTrainText, type ReadResult } from '../document/readTrain'
export type { TrainDocument } from '../document/schema'
export type { Refusal } from '../document/refusal'
export { PlanningRun, type ReadTrain, type Wanted } from '../engine/planningRun'
export type { PlanAnswer } from '../engine/fieldwork/answer'
export type { Solver } from '../engine/lp/solver'
