import type { JudgedState } from './judgedValues'

/** Errors of the numbers of a coupling: number k of draw i stands at k n + i. */
export type ErrorBlock = Float64Array

/**
 * Marks the draws in which a coupling is out in a state.
 * @param bad one entry a draw, set to 1 where any limit is passed
 * @param errors of all numbers, times `times`; @param without taken off once, times `part`
 */
export function markBad(
  bad: Uint8Array,
  { values, limits, pairs }: JudgedState,
  errors: ErrorBlock,
  times: number,
  without?: ErrorBlock,
  part = 0,
): void {
  const n = bad.length
  for (let k = 0; k < pairs; k += 2) {
    const [a, b, limit] = [values[k] ?? 0, values[k + 1] ?? 0, limits[k] ?? 0]
    const [first, second, most] = [k * n, (k + 1) * n, limit * limit]
    for (let i = 0; i < n; i++) {
      let y = a + times * (errors[first + i] as number)
      let z = b + times * (errors[second + i] as number)
      if (without) {
        y -= part * (without[first + i] as number)
        z -= part * (without[second + i] as number)
      }
      if (y * y + z * z > most) bad[i] = 1
    }
  }
  for (let k = pairs; k < values.length; k++) {
    const [a, limit, first] = [values[k] ?? 0, limits[k] ?? 0, k * n]
    if (without)
      for (let i = 0; i < n; i++) {
        const value =
          a + times * (errors[first + i] as number) - part * (without[first + i] as number)
        if (value > limit || value < -limit) bad[i] = 1
      }
    else
      for (let i = 0; i < n; i++) {
        const value = a + times * (errors[first + i] as number)
        if (value > limit || value < -limit) bad[i] = 1
      }
  }
}

/**
 * Share of tolerance that a coupling uses in a state in every draw: the largest over its checks.
 * @param shares filled from `first` on
 */
export function sharesInto(
  shares: Float64Array,
  first: number,
  { values, limits, pairs }: JudgedState,
  errors: ErrorBlock,
  n: number,
): void {
  const at = (k: number, i: number) => (values[k] ?? 0) + (errors[k * n + i] ?? 0)
  for (let i = 0; i < n; i++) {
    let most = 0
    for (let k = 0; k < values.length; k++) {
      const size = k < pairs ? Math.hypot(at(k, i), at(++k, i)) : Math.abs(at(k, i))
      most = Math.max(most, size / (limits[k] ?? 1))
    }
    shares[first + i] = most
  }
}

/** Adds one error to a block: a draw of it times what it does to each number. */
export function addError(block: ErrorBlock, draws: Float64Array, gains: readonly number[]): void {
  const n = draws.length
  gains.forEach((gain, k) => {
    if (gain === 0) return
    const first = k * n
    for (let i = 0; i < n; i++)
      block[first + i] = (block[first + i] as number) + gain * (draws[i] as number)
  })
}

/** Adds a block to another. */
export function addBlock(block: ErrorBlock, other: ErrorBlock): void {
  for (let i = 0; i < block.length; i++) block[i] = (block[i] as number) + (other[i] as number)
}
