import type { Micrometres, Millimetres } from './units'

/**
 * Places of shaft axes found by other means than at the couplings: a level, a wire, optics. Each survey tells them
 * against a straight line of its own, of which nothing is known: only how the train bends counts.
 */
export interface Survey {
  readonly id: string
  readonly name: string
  /** Place in the document, such as `surveys[0]`. */
  readonly place: string
  readonly method?: string
  /** False where it is kept and counts for nothing. */
  readonly used: boolean
  /** Whether the lines of the couplings are fitted to it too, and not only tested by it. */
  readonly joins: boolean
  readonly points: readonly SurveyPoint[]
}

/** Where a shaft axis lies at one place of a machine: beyond the drawing, + up and + toward 3 o'clock. */
export interface SurveyPoint {
  /** Index in `machines`. */
  readonly machine: number
  readonly x: Millimetres
  /** Which shaft of a machine with two: the machine is rigid, so that both tell the same. */
  readonly axis?: 'left' | 'right'
  readonly z?: Micrometres
  readonly y?: Micrometres
  /** Standard uncertainty of each of the two. */
  readonly u: Micrometres
  readonly uGiven: boolean
}
