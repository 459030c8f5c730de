import type { ToothPlace, ToothSide } from '../mechanics/gearCoupling'
import {
  slidingSign,
  toLength,
  type DocumentUnits,
  type MillimetresPerSecond,
} from '../mechanics/units'
import type { Way } from './sides'
import { tidy } from './tidy'

/** What a mesh of teeth is called: by its flex plane, or "teeth" where there is one. */
export const toothPlaceName = (place: ToothPlace): string => (place === 'angle' ? 'teeth' : place)

/** How fast teeth slide, as people of the document write it: "21 mm/s", "0.83 in/s". */
export const slidingText = (speed: MillimetresPerSecond, units: DocumentUnits): string =>
  `${tidy(toLength(speed, units)).toFixed(units.length === 'mm' ? 0 : 2)} ${slidingSign[units.length]}`

/** The way in which the far shaft is kept off the line of the near one; of an angle, how it runs toward the right. */
export function sideWay({ way, sign }: Pick<ToothSide, 'way' | 'sign'>): Way {
  if (way === 'z') return sign > 0 ? 'up' : 'down'
  return sign > 0 ? 'three' : 'nine'
}
