import type { Millimetres, MillimetresPerSecond, Milliradians } from './units'

/** Where the teeth of a gear coupling stand at an angle: at its two flex planes, or between the shafts of one. */
export type ToothPlace = 'left plane' | 'right plane' | 'angle'

/** A side on which a plan keeps an angle off nought: sign times its sideways or upright part is at least the least. */
export interface ToothSide {
  readonly state: string
  readonly place: ToothPlace
  readonly way: 'y' | 'z'
  readonly sign: 1 | -1
}

/** What the teeth of a gear coupling need. */
export interface GearCoupling {
  /** Pitch diameter of the teeth. */
  readonly pitch?: Millimetres
  /** Angle that spreads the lubricant: at every mesh at least so much, the true vector. */
  readonly least?: Milliradians
  /** How fast the teeth may slide. */
  readonly sliding?: MillimetresPerSecond
  /** Ids of the states in which it runs; undefined: all. */
  readonly states?: readonly string[]
  readonly basis?: string
  /** rpm. */
  readonly speed?: number
  /** Sides on which the plan keeps angles off nought; none in a file: they are chosen while planning. */
  readonly sides: readonly ToothSide[]
}
