import type { TrainDocument } from '../document/schema'
import type { Train } from '../mechanics/train'
import { asFound } from '../mechanics/readings/asFound'
import type { PlanAnswer } from './work/answer'
import type { Solver } from './lp/solver'
import { readiness } from './work/ready/readiness'

/** Adds to any answer whether it may be carried out, and why not. */
export function withReady(
  { document, train }: { readonly document: TrainDocument; readonly train: Train },
  answer: PlanAnswer,
  solver: Solver,
): PlanAnswer {
  return { ...answer, ready: readiness(document, train, train.couplings.map(asFound), solver) }
}
