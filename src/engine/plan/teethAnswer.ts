import type { Way } from '../../language/sides'
import type { ToothPlace } from '../../mechanics/gearCoupling'
import type { Milliradians, MillimetresPerSecond } from '../../mechanics/units'

/** How one mesh of the teeth of a gear coupling runs in a state. */
export interface TeethAnswer {
  coupling: string
  state: string
  place: ToothPlace
  /** The least angle that was asked for there; left out where none was. */
  least?: Milliradians
  /** How fast teeth may slide there; left out where no limit was given. */
  limit?: MillimetresPerSecond
  asFound: TeethFigures
  /** After the plan; left out where there is none. */
  planned?: TeethFigures
  /** The side on which the plan keeps it off dead straight; left out where it need not. */
  side?: Way
}

export interface TeethFigures {
  /** mrad; of the far shaft over the span, or of the right shaft against the left one. */
  angle: { y: Milliradians; z: Milliradians }
  size: Milliradians
  /** Under the least. */
  tooStraight?: true
  /** At most over a turn; left out where pitch diameter or speed are not known. */
  sliding?: MillimetresPerSecond
  /** Over the limit. */
  tooFast?: true
}
