import { cleanDuals, type ProgramToBound } from '../../src/engine/proof/cleanDuals'

/** Binary places that products of three doubles need at most. */
const places = 3300n

/** A double as a whole number of 2^-places of its product's share: exact. */
function whole(value: number, bits: bigint): bigint {
  const view = new DataView(new ArrayBuffer(8))
  view.setFloat64(0, value)
  const raw = view.getBigUint64(0)
  const exponent = Number((raw >> 52n) & 0x7ffn)
  const mantissa = (raw & ((1n << 52n) - 1n)) + (exponent === 0 ? 0n : 1n << 52n)
  const scaled = mantissa << (bits + BigInt(Math.max(exponent, 1) - 1075))
  return raw >> 63n === 1n ? -scaled : scaled
}

const third = places / 3n

/** The weak-duality bound of the cleaned duals in whole numbers, and how a double compares with it. */
export function exactBound(program: ProgramToBound, duals: readonly number[], reach: number) {
  const y = cleanDuals(program, duals)
  const one = 1n << third
  let bound = 0n
  const reduced = program.objective.map((cost) => whole(cost, third) * one)
  program.rows.forEach((row, i) => {
    const dual = y[i] ?? 0
    if (dual === 0) return
    bound += whole(dual, third) * whole(dual > 0 ? row.lower : row.upper, third) * one
    for (const [column, coefficient] of row.terms)
      reduced[column] = (reduced[column] ?? 0n) - whole(dual, third) * whole(coefficient, third)
  })
  reduced.forEach((cost, j) => {
    const { lower = 0, upper = 0 } = program.columns[j] ?? {}
    if (cost > 0n) bound += cost * whole(Number.isFinite(lower) ? lower : -reach, third)
    if (cost < 0n) bound += cost * whole(Number.isFinite(upper) ? upper : reach, third)
  })
  return {
    /** True where the double is the exact bound or less. */
    isNotUnder: (value: number) => whole(value, third) * one * one <= bound,
    value: Number(bound >> (3n * third - 60n)) / 2 ** 60,
  }
}
