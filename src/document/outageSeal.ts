import { canonicalJson } from './canonicalJson'
import { fnv64 } from './fingerprint'
import type { OutageDocument } from './schema'

/** Digits of a number that count: a switch of units and back changes the last ones of what a computer holds. */
const counted = 9

/**
 * Worked out from all that an outage says, its numbers in engine units, so that it holds in any units of the document.
 * It shows slips and damage; whoever means to forge it can.
 * @param outage in engine units
 */
export function sealOfOutage(outage: OutageDocument): string {
  const said = Object.fromEntries(Object.entries(outage).filter(([key]) => key !== 'seal'))
  return fnv64(canonicalJson(rounded(said)))
}

function rounded(value: unknown): unknown {
  if (typeof value === 'number') return Number(value.toPrecision(counted)) + 0
  if (Array.isArray(value)) return value.map(rounded)
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, rounded(one)]))
}
