import type { Micrometres, Millimetres } from './units'

export interface PlanSettings {
  readonly share: number
  /** The share as entered, where a smaller one was taken to reach the chance that is asked for. */
  readonly asked?: number
  readonly weights: { readonly shim: number; readonly side: number; readonly axial: number }
  readonly reserve: Micrometres
  readonly shims?: {
    readonly step: Micrometres
    readonly stock: readonly Micrometres[]
    /** Most plates in one pack. */
    readonly most: number
    /** Whether a pack that changes is made anew from the stock; else plates are added to it or taken from it. */
    readonly rebuild: boolean
    /** Most a foot of a machine on three rows or more may stand off the plane of its feet. */
    readonly flat: Micrometres
  }
  /** Moves smaller than this are left alone wherever the plan holds without them. */
  readonly leave: Micrometres
  /** Most that one end may be lifted or lowered ahead of the other. */
  readonly stage: Micrometres
  /** How far a foot is lifted clear of its pack, old and new, to slip shims. */
  readonly slip: Micrometres
  /** So many standard uncertainties are kept between every check and its limit. */
  readonly guard: number
  /** Whether the plan holds for every value within the intervals of growth. */
  readonly worst: boolean
  /** Whether and how the chance that every state is in is worked out; undefined where nobody asks. */
  readonly sure?: SureSettings
}

/** How sure the work is, and what is asked of the plan; undefined: the file gives none. */
export interface SureSettings {
  readonly shim?: Micrometres
  readonly slide?: Micrometres
  readonly foot?: Millimetres
  /** The plan of least cost on the trade-off curve that reaches this chance is wanted. */
  readonly chance?: number
  readonly draws: number
  readonly seed: number
}
