import type { ReadAfter } from './hotCheck'
import type { Coupling } from './train'

/** A coupling as it was read so long after the stop: the same coupling with other sets. */
export const readAt = (coupling: Coupling, { place, found }: ReadAfter): Coupling => ({
  ...coupling,
  place,
  found,
})
