import type { MotionGroup } from '../../lp/parts'
import type { Apart } from './apart'
import type { KeptAlone } from './keptAlone'
import type { LimitWeight, CouplingWeight, PressedTeeth } from './dualWeights'

export type FloorKind = 'none' | 'kept' | 'states' | 'still' | 'teeth' | 'limits' | 'machines'

/** What holds a floor, a share of tolerance, where it is. */
export interface FloorCause {
  readonly kind: FloorKind
  readonly floor: number
  readonly pulls: readonly CouplingWeight[]
  readonly apart?: Apart
  /** The check that what is kept free fills, where that alone holds the floor. */
  readonly kept?: KeptAlone
  readonly props: readonly LimitWeight[]
  /** Teeth whose least angle holds the floor, together with the tolerances that pull. */
  readonly teeth?: readonly PressedTeeth[]
  /** The part whose floor it is; none where a coupling between bodies that stay holds it. */
  readonly group?: MotionGroup
}
