import type { TrainDocument } from '../train/document'
import type { Train } from '../train/model'
import { asFound } from '../readings/asFound'
import type { PlanAnswer } from '../plan/answer'
import type { Solver } from '../solver/solver'
import { readiness } from './readiness'

/** Adds to any answer whether it may be carried out, and why not. */
export function withReady(
  { document, train }: { readonly document: TrainDocument; readonly train: Train },
  answer: PlanAnswer,
  solver: Solver,
): PlanAnswer {
  return { ...answer, ready: readiness(document, train, train.couplings.map(asFound), solver) }
}
