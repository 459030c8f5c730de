import type { DocumentUnits } from '../mechanics/units'
import { inUnits, type Measure } from './inUnits'

/**
 * What every number of a value measures, by its keys; lists by what one of them is. "as it is" leaves a value
 * alone: places in a list, what somebody typed, words. A number without an entry does not pass the type check,
 * so that a new field of an answer cannot be told in the engine's units.
 */
export type MeasuresOf<Value> = 'as it is' | Inside<NonNullable<Value>>

type Inside<Value> = [Value] extends [number]
  ? Measure
  : [Value] extends [readonly (infer One)[]]
    ? MeasuresOf<One>
    : { readonly [Key in NumericKey<Value>]-?: MeasuresOf<Field<Value, Key>> }

/** Whether there is a number anywhere in a value. */
type HasNumber<Value> = Value extends number
  ? true
  : Value extends string | boolean | null | undefined
    ? never
    : Value extends readonly (infer One)[]
      ? HasNumber<One>
      : { [Key in keyof Value]-?: HasNumber<Value[Key]> }[keyof Value]

/** Keys under which a value, or one of the kinds that it may be of, has numbers. */
type NumericKey<Value> = Value extends unknown
  ? {
      [Key in keyof Value]-?: [HasNumber<Value[Key]>] extends [never] ? never : Key
    }[keyof Value]
  : never

type Field<Value, Key extends PropertyKey> = Value extends unknown
  ? Key extends keyof Value
    ? Value[Key]
    : never
  : never

/** The same value with its numbers in the document's units; keys stand in the order they had. */
export function written<Value>(
  value: Value,
  measures: MeasuresOf<Value>,
  units: DocumentUnits,
): Value {
  return converted(value, measures, units) as Value
}

function converted(value: unknown, measures: unknown, units: DocumentUnits): unknown {
  if (measures === undefined || measures === 'as it is') return value
  if (typeof value === 'number') return inUnits(value, measures as Measure, units)
  if (Array.isArray(value)) return value.map((one: unknown) => converted(one, measures, units))
  if (typeof value !== 'object' || value === null) return value
  const inside = measures as Readonly<Record<string, unknown>>
  return Object.fromEntries(
    Object.entries(value).map(([key, one]) => [key, converted(one, inside[key], units)]),
  )
}
