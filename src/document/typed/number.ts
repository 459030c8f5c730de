import { listed } from '../../language/names'
import type { DocumentUnits } from '../../mechanics/units'
import { parseSum, type SumTerm } from './sum'
import type { Quantity } from '../quantities'
import { inDocument, unitNamed, unitsOf } from './typedUnits'

export type NumberEntry =
  { readonly ok: true; readonly value: number } | { readonly ok: false; readonly why: string }

/** Digits that a converted number keeps: all that a person could have meant. */
const digits = 12

/**
 * Reads a number as people write it: a decimal comma or point, a fraction of an inch ("12 3/8"), a
 * simple sum ("-6/2+1"), a unit behind the number ("0.4 mm" on a sheet in inches). A unit at the end
 * of a sum whose other terms have none counts for all of them.
 * @returns the value in the document's unit for that quantity, or what is wrong and what would be right
 */
export function readNumber(text: string, quantity: Quantity, units: DocumentUnits): NumberEntry {
  const sum = parseSum(text)
  if (!sum.ok) return sum
  const named = sum.terms.map(({ unit }) => unit).filter((unit) => unit !== '')
  const strange = named.find((unit) => !unitNamed(unit, quantity))
  if (strange !== undefined) {
    const known = unitsOf(quantity)
    return wrong(
      known.length === 0
        ? `“${strange}” stands behind a number that has no unit: write the number alone`
        : `“${strange}” is no unit for this number: write ${listed(known, 'or')}, or no unit`,
    )
  }
  const only = named.length === 1 && sum.terms.at(-1)?.unit !== '' ? (named[0] ?? '') : ''
  const mixed = named.length > 0 && only === '' && named.length < sum.terms.length
  if (mixed)
    return wrong('some numbers of this sum have a unit and some have none: write it behind each')
  if (quantity === 'temperature' && named.length > 0 && sum.terms.length > 1)
    return wrong('a sum of temperatures with units has no meaning: write one temperature')
  const value = sum.terms.reduce((total, term) => total + convert(term, only, quantity, units), 0)
  if (!Number.isFinite(value))
    return wrong('this comes to no finite number: divide by something else than 0')
  return { ok: true, value: Number(value.toPrecision(digits)) }
}

/** Whether a text that can be read is more than one number with its sign. */
export function isSum(text: string): boolean {
  const sum = parseSum(text)
  return sum.ok && sum.terms.length > 1
}

const convert = (term: SumTerm, only: string, quantity: Quantity, units: DocumentUnits): number => {
  const unit = term.unit === '' ? only : term.unit
  return unit === '' ? term.value : inDocument(term.value, unit, quantity, units)
}

const wrong = (why: string): NumberEntry => ({ ok: false, why })
