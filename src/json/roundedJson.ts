import type { DocumentUnits } from '../mechanics/units'
import type { PackAnswer, RoundedAnswer, RoundingMade } from '../engine/rounding/answer'
import type { SureAnswer } from '../engine/chance/answer'
import { stators } from './statorsJson'
import { bodies, couplingsJson, expectedJson, feet, totals } from './planJson'
import { sureJson } from './sureJson'
import { written, type MeasuresOf } from './written'

const packs: MeasuresOf<PackAnswer[]> = {
  change: 'fine',
  packAfter: 'fine',
  out: 'fine',
  use: 'fine',
}

const rounding: Exclude<MeasuresOf<Omit<RoundingMade, 'packs'>>, string> = {
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
  stators,
  flat: 'fine',
  left: { row: 'as it is', move: 'fine' },
  small: { row: 'as it is', move: 'fine' },
}

/** A plan rounded to the shims of the store, in the document's units; its packs stand beside it. */
export function roundedJson(
  answer: RoundedAnswer,
  sure: SureAnswer | undefined,
  units: DocumentUnits,
) {
  const couplings = couplingsJson(answer.couplings, units)
  if (answer.status === 'no rounding')
    return { rounded: { ...written(answer, rounding, units), couplings } }
  const { packs: all, ...rounded } = answer
  return {
    packs: written(all, packs, units),
    rounded: {
      ...(written<Omit<RoundingMade, 'packs'>>(rounded, rounding, units) as typeof rounded),
      couplings,
      expected: expectedJson(rounded.expected, units),
      ...(sure && { sure: sureJson(sure, units) }),
    },
  }
}
