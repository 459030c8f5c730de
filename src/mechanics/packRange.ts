import type { Micrometres } from './units'
import type { Foot } from './train'

/** Change of a pack that its limits allow, [down, up]; a limit already passed becomes "no further". */
export function packRange(pack: NonNullable<Foot['pack']>): [Micrometres, Micrometres] {
  const { now, min, max = Infinity } = pack
  return [Math.min(0, min - now), Math.max(0, max - now)]
}
