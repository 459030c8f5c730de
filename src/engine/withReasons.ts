import type { TrainDocument } from '../document/schema'
import type { Train } from '../mechanics/train'
import { asFound } from '../mechanics/readings/asFound'
import { conflictsOf, contradictionOf } from './infeasible/conflict/conflict'
import type { Solver } from './lp/solver'
import type { PlanAnswer } from './work/answer'
import { remediesOf } from './infeasible/remedies/remedies'

/**
 * Adds to an impossible answer why it is so, and what would make it possible; leaves every other
 * answer as it is. Takes many solutions where planning takes a few.
 */
export function withReasons(
  { document, train }: { readonly document: TrainDocument; readonly train: Train },
  answer: PlanAnswer,
  solver: Solver,
): PlanAnswer {
  if (answer.status !== 'impossible') return answer
  const contradiction = contradictionOf(train, train.couplings.map(asFound), solver)
  const [first, ...behind] = conflictsOf(contradiction, solver)
  return {
    ...answer,
    ...(first && { conflict: first.members, conflictSentence: first.sentence, behind }),
    ...remediesOf(document, contradiction, answer.floor, solver),
  }
}
