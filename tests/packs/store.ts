import { fineFactor, type Foot } from '../second/train'
import type { Shimmed } from './shimmed'

/** Every sum of one to `most` plates, with the fewest plates that make it: all multisets, one by one. */
export function everySum(stock: readonly number[], most: number): Map<number, number> {
  const sums = new Map<number, number>()
  const add = (first: number, sum: number, pieces: number) => {
    if (pieces > 0) sums.set(sum, Math.min(sums.get(sum) ?? Infinity, pieces))
    if (pieces === most) return
    for (let i = first; i < stock.length; i++) add(i, sum + (stock[i] ?? 0), pieces + 1)
  }
  add(0, 0, 0)
  return sums
}

/** Whole hundredths of a micrometre, in which every thickness of these tests is a whole number. */
export const whole = (um: number): number => Math.round(um * 100)

/**
 * The changes (um) that the contract lets a foot make, from what it says alone: whole steps out of a
 * pack that is kept, or a sum of at most `most` plates on it; where packs are made anew the pack after
 * is such a sum, in whole steps.
 */
export function storeChanges(train: Shimmed): (foot: Foot) => number[] {
  const fine = fineFactor(train)
  const { step, stock, most = 4, rebuild = false } = train.plan.shims
  const size = whole(step * fine)
  const sums = [
    ...everySum(
      stock.map((t) => whole(t * fine)),
      most,
    ).keys(),
  ].filter((sum) => sum % size === 0)
  const down = Array.from({ length: 400 }, (_, i) => -(i + 1) * size)
  return ({ pack, free, lift }) => {
    if (free?.shim === false) return [0]
    const now = pack ? whole(pack.now) : 0
    const all =
      rebuild && pack ? [0, ...[0, ...sums].map((sum) => sum - now)] : [...down, 0, ...sums]
    const low = pack ? Math.min(0, whole(pack.min ?? 0) - now) : -Infinity
    const high = pack?.max === undefined ? Infinity : Math.max(0, whole(pack.max) - now)
    const top = Math.min(high, lift === undefined ? Infinity : Math.max(0, whole(lift)))
    return [...new Set(all.filter((change) => change >= low - 1 && change <= top + 1))]
      .map((change) => change / 100)
      .sort((a, b) => a - b)
  }
}
