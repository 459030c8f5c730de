import type { Band } from '../../../mechanics/misalignment/bands'
import type { Motion } from '../../../mechanics/motion'
import type { Kilograms, Micrometres, Millimetres } from '../../../mechanics/units'
import type { ExpectedAnswer } from '../../plan/answer'

export type StepKind = 'soft foot' | 'axial' | 'vertical' | 'lateral' | 'read'

/** The order of work. */
export interface StepsAnswer {
  steps: StepAnswer[]
  /** Limits that some step passes on the way; empty: every step keeps all limits. */
  breaks: BreakAnswer[]
  /** Ids of the steps that move something, in this order. */
  order: string[]
  /** True where somebody chose the order; `found` is then the order the rules give. */
  chosen: boolean
  found: string[]
  /** Ids in the chosen order that are no step of this plan. */
  unknown: string[]
  /** What the order rests on, or that nothing needs to move. */
  words: string
}

export interface StepAnswer {
  id: string
  kind: StepKind
  body: string
  /** What to do at each foot; empty for a step that reads. */
  feet: StepFootAnswer[]
  /** One sentence that says what to do. */
  words: string
  /** What must be seen and agreed before the next step. */
  hold?: string
  /** What is opened and loosened before it, a sentence each. */
  before: string[]
  cautions: string[]
  dials: DialAnswer[]
  /**
   * Every pose of the body from before the step to after it, lifts to change packs included; one pose where nothing
   * moves. Between two of them the body goes straight.
   */
  poses: PoseAnswer[]
  /**
   * How the way is cut up: so many pieces of a slide, the end named first ahead; of a step that shims so many moves of
   * the jacks. `each` is the most that an end goes in one of them.
   */
  stops?: { count: number; each: Micrometres; first: 'left' | 'right' | 'together' }
  /** What a jack takes at each foot. */
  load?: {
    total: Kilograms
    corners: { foot: string; load: Kilograms }[]
    jack: Kilograms
    rating?: Kilograms
    over: boolean
    assumed: string
  }
  /** Couplings whose readings this step changes, what they should show after it, and whether that can be judged. */
  expected: ExpectedAnswer[]
  judge: JudgeAnswer[]
  /** Gaps between shaft ends to be measured where it stops; none where there is nothing of them to measure. */
  gaps?: GapAnswer[]
  breaks: BreakAnswer[]
  /** Where the bodies stand after the step that it changes: own motion from where they were found. */
  standing: { id: string; move: Motion }[]
  /** True after a soft-foot step until the train has been read again. */
  provisional: boolean
}

/** A gap between shaft ends as it should be, cold, and from where to where it is good, 19 times of 20. */
export interface GapAnswer {
  coupling: string
  should: Millimetres
  good: readonly [low: Millimetres, high: Millimetres]
}

export interface PoseAnswer {
  /** Own motion of the body from where it was found. */
  move: Motion
  /** What was done to come there. */
  why: string
}

export interface StepFootAnswer {
  foot: string
  /** + is up, toward 3 o'clock, to the right. */
  shim?: Micrometres
  side?: Micrometres
  axial?: Micrometres
  packBefore?: Micrometres
  packAfter?: Micrometres
  /** What comes out and which plates go in, where packs are worked out; in less out is the change. */
  out?: Micrometres[]
  use?: Micrometres[]
  /** The most it is lifted on the way, above where it stood before the step. */
  lift?: Micrometres
  /** Room left between bolt and hole after the step. */
  room?: Micrometres
}

/** A dial indicator at the machine. */
export interface DialAnswer {
  /** Foot of the step that it stands at; missing for one on another machine: it must not move, or goes with its skid. */
  foot?: string
  /** Where it stands and which way its stem points. */
  where: string
  way: 'vertical' | 'lateral' | 'axial'
  /** What it should show at the end of the step, with its sign, after zero at the start. */
  shows: Micrometres
  /** From where to where that is good, 19 times of 20. */
  good?: Band
}

export interface JudgeAnswer {
  coupling: string
  judge: 'good to judge' | 'not yet'
  /** Empty where it is good. */
  why: string
  /** Largest move that a body at this coupling still has to make. */
  left: Micrometres
}

export interface BreakAnswer {
  step: string
  limit: string
  where: string
  /** um, or mrad for a tilt. */
  by: number
  quantity: 'fine' | 'slope'
  /** One sentence: what is passed, where and by how much. */
  words: string
  /** What would keep it. */
  instead: string
  /** Of a limit passed by being lifted: the most room over the packs with which the step keeps every limit. */
  slip?: Micrometres
  /**
   * A stop that keeps every limit: after this part of the step (0: none of it) the steps named, then the
   * rest; or, with `pieces`, a stop after each of so many portions that take turns.
   */
  stop?: { part: number; then: string[]; pieces?: number }
}
