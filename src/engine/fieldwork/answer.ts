import type { Conflict, ConflictMember } from '../infeasible/conflict/answer'
import type { HoldsTried, Remedy } from '../infeasible/remedies/answer'
import type { PlanFigures } from '../plan/answer'
import type { PackAnswer, RoundedAnswer } from '../rounding/answer'
import type { ReadyAnswer } from './ready/answer'
import type { StepsAnswer } from './steps/answer'

/** What planning a train answers. Keys as in the output contract. */
export interface PlanAnswer extends PlanFigures {
  /** What goes under which foot, in plates of the stock; where `plan.shims` is given and a rounding was found. */
  packs?: PackAnswer[]
  rounded?: RoundedAnswer
  /** An irreducible set of what cannot be had together; with status "impossible" only, as what follows. */
  conflict?: ConflictMember[]
  conflictSentence?: string
  /** What would be in the way next if the limits of that conflict gave. */
  behind?: Conflict[]
  remedies?: Remedy[]
  holdsTried?: HoldsTried
  /** Whether it may be carried out: soft foot, pipe strain, signs, closures. */
  ready?: ReadyAnswer
  /** The order of work, where there is a plan. */
  steps?: StepsAnswer
}
