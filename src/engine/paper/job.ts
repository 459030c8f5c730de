import type { Holds } from '../holds/holdRows'
import type { PlanAnswer } from '../plan/answer'
import { figuresOf, type Figures } from '../scene/figures'
import type { TrainDocument } from '../train/document'
import type { Train } from '../train/model'

/** What a work sheet is made from: the file as typed and as read, its plan, and what else was worked out. */
export interface PaperJob {
  readonly document: TrainDocument
  readonly train: Train
  readonly answer: PlanAnswer
  /** Choices of held bodies, where they were solved. */
  readonly holds?: Holds
}

/** The same with the lines behind the drawings, worked out once. */
export interface Drawn extends PaperJob {
  readonly figures: Figures
}

export const drawn = (job: PaperJob): Drawn => ({
  ...job,
  figures: figuresOf(job.train, job.answer),
})
