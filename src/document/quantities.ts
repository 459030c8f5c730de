import { z } from 'zod'

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
  | 'hour'
  | 'plain'

/** What each number of a schema measures; a number made from another (`fine.positive()`) measures the same. */
const measures = z.registry<{ quantity: Quantity }>()
/** What is understood of parts that are open in the file: anything is taken there and kept. */
const opens = new WeakMap<z.core.$ZodType, z.core.$ZodType>()

const measured = (quantity: Quantity): z.ZodNumber => z.number().register(measures, { quantity })

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
/** Hour on a clock face. */
export const hour = measured('hour')
/** A share, a factor or a count: the same in all units. */
export const plain = measured('plain')

/** A part that takes anything, of which `understood` says what is read there. */
export function open(understood: z.core.$ZodType): z.ZodUnknown {
  const schema = z.unknown()
  opens.set(schema, understood)
  return schema
}

export const quantityOf = (schema: z.core.$ZodType): Quantity | undefined =>
  measures.get(schema)?.quantity

/** A number of a schema: where it stands (`*` for any key or index), what it measures, whether in an open part. */
export interface NumberPlace {
  readonly path: readonly string[]
  /** Undefined where the schema has forgotten to say it. */
  readonly quantity: Quantity | undefined
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
  if (def.type === 'number') return [{ path, quantity: quantityOf(schema), open: isOpen }]
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
