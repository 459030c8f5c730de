import { fineFactor, lengthFactor, type Train } from '../train'
import type { Check } from './checks'

/** Standard uncertainty of what one check sees, in the document's units: y and z, or x of the gap. */
export interface Spread {
  what: Check['what']
  y?: number
  z?: number
  x?: number
}

/** Two variances of a check (um or mrad, squared) as its spread. */
export function spreadOf({ what }: Check, yy: number, zz: number, document: Train): Spread {
  const [y, z] = [Math.sqrt(yy), Math.sqrt(zz)]
  if (what === 'gap' || what === 'stretch' || what === 'float')
    return { what, x: y / 1000 / lengthFactor(document) }
  const unit = what === 'offset' ? fineFactor(document) : 1
  return { what, y: y / unit, z: z / unit }
}
