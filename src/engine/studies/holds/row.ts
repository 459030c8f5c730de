import type { Micrometres } from '../../../mechanics/units'
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
  /** Why there is no answer; with status "unproven" or "stopped" only. */
  readonly fault?: string
}
