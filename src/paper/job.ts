import { instructionsOf, type Instruction } from '../engine/fieldwork/steps/instructions'
import { hasMoves } from '../engine/plan/moves'
import type { PlanAnswer } from '../engine/fieldwork/answer'
import { displayedPlan } from '../engine/fieldwork/displayed'
import { figuresOf, type Figures } from '../scene/figures'
import type { HoldList } from '../text/holdList'
import type { TrainDocument } from '../document/schema'
import type { Train } from '../mechanics/train'

/** What a work sheet is made from: the file as typed and as read, its plan, and what else was worked out. */
export interface PaperJob {
  readonly document: TrainDocument
  readonly train: Train
  readonly answer: PlanAnswer
  /** Choices of held bodies, where they were solved. */
  readonly holds?: HoldList
}

/** The same with the lines behind the drawings, worked out once. */
export interface Drawn extends PaperJob {
  /** As it is carried out: rounded to the shims of the store where that was worked out. */
  readonly answer: PlanAnswer
  /** The least move, before rounding: what is proven. */
  readonly plan: PlanAnswer
  readonly figures: Figures
  /** The order of work, numbered as on every face; none without a plan. */
  readonly instructions: readonly Instruction[]
}

export function drawn(job: PaperJob): Drawn {
  const answer = displayedPlan(job.answer)
  const steps = hasMoves(answer) ? answer.steps : undefined
  return {
    ...job,
    answer,
    plan: job.answer,
    figures: figuresOf(job.train, answer),
    instructions: steps ? instructionsOf(job.train, steps) : [],
  }
}
