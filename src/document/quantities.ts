import * as z from 'zod/mini'
import { tol } from '../mechanics/tolerances'

/** What a number of the train file measures; decides its unit and how it converts. */
export type Quantity =
  | 'length'
  | 'fine'
  | 'slope'
  | 'temperature'
  | 'expansion'
  | 'mass'
  | 'torque'
  | 'speed'
  | 'sliding'
  | 'hour'
  | 'time'
  | 'plain'

/** A size beyond which a number is a slip: in the unit that the engine has the quantity in, and as it is said. */
export interface Size {
  readonly value: number
  readonly said: string
}

/**
 * The largest size of every quantity, and the smallest that is not 0 of those that cannot be negative: tolerances,
 * uncertainties, diameters, which are divided by. Far beyond what the trade has, so that nothing real is refused,
 * and near enough that nothing worked out from accepted numbers leaves what a computer can hold.
 * In engine units: mm, um, mrad, kg, N·m, mm/s, min; degrees and 1e-6 per degree as written.
 */
export const sizes: Readonly<Record<Quantity, { readonly least: Size; readonly most: Size }>> = {
  length: {
    least: { value: 1e-9, said: '1 pm' },
    most: { value: tol.largestLength, said: '1 km' },
  },
  fine: { least: { value: 1e-6, said: '1 pm' }, most: { value: tol.largestFine, said: '1 m' } },
  // limits that are meant to be none are written with many noughts
  slope: { least: { value: 1e-9, said: '1 pm in 1 m' }, most: { value: 1e12, said: '1e12 mrad' } },
  temperature: {
    least: { value: 1e-6, said: 'a millionth of a degree' },
    most: { value: 1e4, said: '10000 degrees' },
  },
  expansion: {
    least: { value: 1e-6, said: '1e-12 per degree' },
    most: { value: 1e4, said: '1 % per degree' },
  },
  mass: { least: { value: 1e-6, said: '1 mg' }, most: { value: 1e12, said: '1e12 kg' } },
  torque: { least: { value: 1e-6, said: '1e-6 N·m' }, most: { value: 1e12, said: '1e12 N·m' } },
  speed: { least: { value: 1e-6, said: '1e-6 rpm' }, most: { value: 1e12, said: '1e12 rpm' } },
  sliding: { least: { value: 1e-6, said: '1 nm/s' }, most: { value: 1e9, said: '1e9 mm/s' } },
  hour: { least: { value: 1e-6, said: '1e-6' }, most: { value: 12, said: '12' } },
  time: {
    least: { value: 1e-6, said: 'a millionth of a minute' },
    most: { value: 1e6, said: '1e6 min' },
  },
  plain: { least: { value: 1e-9, said: '1e-9' }, most: { value: 1e9, said: '1e9' } },
}

/** What a number of a schema measures, and the least size of this one where it has its own. */
interface Measure {
  readonly quantity: Quantity
  readonly least?: Size
}

/** What each number of a schema measures; a number made from another (`fine.positive()`) measures the same. */
const measures = z.registry<Measure>()
/** What is understood of parts that are open in the file: anything is taken there and kept. */
const opens = new WeakMap<z.core.$ZodType, z.core.$ZodType>()

const measured = (quantity: Quantity): z.ZodMiniNumber =>
  z.number().register(measures, { quantity })

/** Positions, heights, diameters, gaps between shaft ends: in `units.length`. */
export const length = measured('length')
/** Readings, moves, shims, clearances, growth, offsets: in `units.fine`. */
export const fine = measured('fine')
/** mrad, which is the same number as mil/in. */
export const slope = measured('slope')
/** Degrees of `units.temperature`. */
export const temperature = measured('temperature')
/** 1e-6 per degree of `units.temperature`. */
export const expansion = measured('expansion')
/** kg, or lb in a document in inches. */
export const mass = measured('mass')
/** N·m, or ft·lb in a document in inches. */
export const torque = measured('torque')
/** rpm. */
export const speed = measured('speed')
/** mm/s, or in/s in a document in inches. */
export const sliding = measured('sliding')
/** Hour on a clock face. */
export const hour = measured('hour')
/** Minutes. */
export const time = measured('time')
/** A share, a factor or a count: the same in all units. */
export const plain = measured('plain')

/** A number that is never negative, with a least size of its own above 0, in the unit that the engine has it in. */
export function fromSize(schema: z.ZodMiniNumber, least: Size): z.ZodMiniNumber {
  const quantity = quantityOf(schema)
  return quantity ? schema.clone().register(measures, { quantity, least }) : schema
}

/** A part that takes anything, of which `understood` says what is read there. */
export function open(understood: z.core.$ZodType): z.ZodMiniUnknown {
  const schema = z.unknown()
  opens.set(schema, understood)
  return schema
}

export const quantityOf = (schema: z.core.$ZodType): Quantity | undefined =>
  measures.get(schema)?.quantity

/** What a number may be at most, and at least above 0 where it cannot be negative; neither of a count, which says its own. */
export interface Bounds {
  readonly least?: Size
  readonly most?: Size
}

export function boundsOf(schema: z.core.$ZodType): Bounds {
  const measure = measures.get(schema)
  const { def } = (schema as z.core.$ZodTypes)._zod
  if (!measure || def.type !== 'number') return {}
  const checks = (def.checks ?? []).map((check) => (check as z.core.$ZodChecks)._zod.def)
  if (checks.some((check) => check.check === 'number_format')) return {}
  const { least, most } = sizes[measure.quantity]
  const positive = checks.some(
    (check) => check.check === 'greater_than' && Number(check.value) >= 0,
  )
  return positive ? { least: measure.least ?? least, most } : { most }
}

/** A number of a schema: where it stands (`*` for any key or index), what it measures, whether in an open part. */
export interface NumberPlace {
  readonly path: readonly string[]
  /** Undefined where the schema has forgotten to say it. */
  readonly quantity: Quantity | undefined
  readonly bounds: Bounds
  readonly open: boolean
}

/** All numbers of a schema. A value that is fixed, such as the version, is no measure. */
export function numberPlaces(
  schema: z.core.$ZodType,
  path: readonly string[] = [],
  isOpen = false,
): NumberPlace[] {
  const { def } = (schema as z.core.$ZodTypes)._zod
  const inner = (next: z.core.$ZodType, ...keys: string[]) =>
    numberPlaces(next, [...path, ...keys], isOpen)
  if (def.type === 'number')
    return [{ path, quantity: quantityOf(schema), bounds: boundsOf(schema), open: isOpen }]
  if (def.type === 'optional') return inner(def.innerType)
  if (def.type === 'object')
    return Object.entries(def.shape).flatMap(([key, next]) => inner(next, key))
  if (def.type === 'array') return inner(def.element, '*')
  if (def.type === 'record') return inner(def.valueType, '*')
  if (def.type === 'tuple') return def.items.flatMap((next, i) => inner(next, String(i)))
  if (def.type === 'union') return def.options.flatMap((next) => inner(next))
  if (def.type === 'unknown') {
    const understood = opens.get(schema)
    return understood ? numberPlaces(understood, path, true) : []
  }
  if (['string', 'boolean', 'enum', 'literal'].includes(def.type)) return []
  throw new RangeError(
    `${path.join('.')}: say in numberPlaces which numbers a schema of kind "${def.type}" has`,
  )
}
