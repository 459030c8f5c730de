import type { Micrometres } from '../../../mechanics/units'
import type { WantedOfHold } from '../../chance/answer'
import type { BindingAnswer, Totals } from '../../plan/answer'

interface Choice {
  /** Chosen and anchored, in document order. */
  readonly held: readonly string[]
  /** Bodies that the plan moves, by themselves, by more than 0.1 um at any foot; none without a plan. */
  readonly disturbed: readonly string[]
  /** Null when its program was stopped. */
  readonly floor: number | null
  /** Where a chance is asked for: the share of tolerance at which this choice reaches it, or comes nearest. */
  readonly wanted?: WantedOfHold
}

/** What only a plan has: no other row may carry it, so that asking for it tells whether there is one. */
interface OfAPlan {
  readonly cost: Micrometres
  /** Cost plus the effort of every disturbed body. */
  readonly costWithEffort: Micrometres
  readonly total: Totals
  readonly worstShare: number
}

type WithoutPlan = { readonly [Key in keyof OfAPlan | 'binding']?: undefined }

/** A choice with a plan; what binds only where prices were asked for. */
export interface PlannedRow extends Choice, OfAPlan {
  readonly status: 'planned' | 'in-tolerance'
  readonly binding?: readonly BindingAnswer[]
  readonly fault?: undefined
}

interface ImpossibleRow extends Choice, WithoutPlan {
  readonly status: 'impossible'
  readonly fault?: undefined
}

/** A choice without an answer, and why. */
interface FaultyRow extends Choice, WithoutPlan {
  readonly status: 'unproven' | 'stopped'
  readonly fault: string
}

/** What one choice of held bodies comes to. The JSON Schema of rows is the output contract's. */
export type HoldRow = PlannedRow | ImpossibleRow | FaultyRow
