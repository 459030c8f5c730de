import {
  type DocumentUnits,
  fineSign,
  massSign,
  slidingSign,
  slopeSign,
  temperatureSign,
  torqueSign,
} from '../mechanics/units'
import type { Quantity } from './quantities'

/** The sign of the unit in which a document writes a quantity; "" where it has none. */
export function unitSign(quantity: Quantity, units: DocumentUnits): string {
  switch (quantity) {
    case 'length':
      return units.length
    case 'fine':
      return fineSign[units.fine]
    case 'slope':
      return slopeSign(units)
    case 'temperature':
      return temperatureSign(units)
    case 'expansion':
      return `1e-6/${temperatureSign(units)}`
    case 'mass':
      return massSign[units.length]
    case 'torque':
      return torqueSign[units.length]
    case 'speed':
      return 'rpm'
    case 'sliding':
      return slidingSign[units.length]
    case 'hour':
      return "o'clock"
    case 'time':
      return 'min'
    case 'plain':
      return ''
  }
}
