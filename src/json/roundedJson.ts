import type { DocumentUnits } from '../mechanics/units'
import type { PackAnswer, RoundedAnswer } from '../engine/rounding/answer'
import { bodies, couplingsJson, expectedJson, feet, totals } from './planJson'
import { written, type MeasuresOf } from './written'

const packs: MeasuresOf<PackAnswer[]> = {
  change: 'fine',
  packAfter: 'fine',
  out: 'fine',
  use: 'fine',
}

const rounding: Exclude<MeasuresOf<RoundedAnswer>, string> = {
  worstShare: 'plain',
  feet: { ...feet, offPlane: 'fine' },
  couplings: 'as it is',
  before: { cost: 'fine', worstShare: 'plain' },
  cost: 'fine',
  bound: 'fine',
  gap: 'fine',
  ways: { told: 'fine', alone: 'fine' },
  worstViolation: 'fine',
  total: totals,
  bodies,
  expected: 'as it is',
  flat: 'fine',
  left: { row: 'as it is', move: 'fine' },
  small: { row: 'as it is', move: 'fine' },
}

/** Packs as they are to be made, in the document's units. */
export const packsJson = (all: readonly PackAnswer[], units: DocumentUnits): PackAnswer[] =>
  written([...all], packs, units)

/** A plan rounded to the shims of the store, in the document's units. */
export const roundedJson = (rounded: RoundedAnswer, units: DocumentUnits): RoundedAnswer => ({
  ...written(rounded, rounding, units),
  couplings: couplingsJson(rounded.couplings, units),
  ...(rounded.expected && { expected: expectedJson(rounded.expected, units) }),
})
