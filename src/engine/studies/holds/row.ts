import type { Micrometres } from '../../../mechanics/units'
import type { WantedOfHold } from '../../chance/answer'
import type { BindingAnswer, PlanStatus, Totals } from '../../plan/answer'

/**
 * What one choice of held bodies comes to. Cost, moves and prices are absent
 * where there is no plan. The JSON Schema of rows is the output contract's.
 */
export interface HoldRow {
  /** Chosen and anchored, in document order. */
  readonly held: readonly string[]
  /** Bodies that the plan moves, by themselves, by more than 0.1 um at any foot. */
  readonly disturbed: readonly string[]
  readonly status: PlanStatus
  readonly cost?: Micrometres
  /** Cost plus the effort of every disturbed body. */
  readonly costWithEffort?: Micrometres
  /** Null when its program was stopped. */
  readonly floor: number | null
  readonly total?: Totals
  readonly worstShare?: number
  readonly binding?: readonly BindingAnswer[]
  /** Where a chance is asked for: the share of tolerance at which this choice reaches it, or comes nearest. */
  readonly wanted?: WantedOfHold
  /** Why there is no answer; with status "unproven" or "stopped" only. */
  readonly fault?: string
}
