import type { Train } from './train'
import type { Millimetres } from './units'

/**
 * Where a machine's shaft is drawn: from flex plane to flex plane, or to its outermost foot.
 * @param machine index from the left
 * @returns x of its two ends (mm)
 */
export function shaftEnds(train: Train, machine: number): readonly [Millimetres, Millimetres] {
  const body = train.machines[machine]
  const left = train.couplings[machine - 1]?.q
  const right = train.couplings[machine]?.p
  const feet = body?.feet.map(({ x }) => x) ?? []
  const reach = 2 * Math.max(body?.axis.left.z ?? 0, 100)
  const low = left ?? Math.min(...feet, right === undefined ? Infinity : right - reach / 4)
  const high = right ?? Math.max(...feet, left === undefined ? -Infinity : left + reach / 4)
  return [low, Math.max(low, high)]
}
