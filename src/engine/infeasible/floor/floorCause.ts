import type { Group } from '../../lp/parts'
import type { Apart } from './apart'
import type { Prop, Pull } from './dualWeights'

export type FloorKind = 'none' | 'states' | 'still' | 'limits' | 'machines'

/** What holds a floor where it is. */
export interface FloorCause {
  readonly kind: FloorKind
  readonly floor: number
  readonly pulls: readonly Pull[]
  readonly apart?: Apart
  readonly props: readonly Prop[]
  /** The part whose floor it is; none where a coupling between bodies that stay holds it. */
  readonly group?: Group
}
