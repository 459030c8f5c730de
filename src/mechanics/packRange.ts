import { tol } from './tolerances'
import type { Micrometres } from './units'
import type { Foot } from './train'

/** Change of a pack that its limits allow, [down, up]; a limit already passed becomes "no further". */
export function packRange(pack: NonNullable<Foot['pack']>): [Micrometres, Micrometres] {
  const { now, min, max = Infinity } = pack
  return [Math.min(0, min - now), Math.max(0, max - now)]
}

/** Whether the plates entered for a pack make it, to the nanometre of each; false where none were entered. */
export function platesAddUp({ now, plates }: NonNullable<Foot['pack']>): boolean {
  if (!plates) return false
  const sum = plates.reduce((all, plate) => all + plate, 0)
  return Math.abs(sum - now) <= tol.plateSum * (plates.length + 1)
}
