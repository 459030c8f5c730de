import * as z from 'zod/mini'
import { fine, hour, length, slope } from './quantities'
import { name, text } from './texts'

/** Reading sets as the train file has them, with how unsure each is: the only definition of their shape. */

export const offsets = z.strictObject({ y: z.optional(fine), z: z.optional(fine) })
export const slopes = z.strictObject({ y: z.optional(slope), z: z.optional(slope) })

/** The hour, and what the dial showed there. */
const reading = z.tuple([hour.check(z.gt(0), z.lte(12)), fine])
const setFields = {
  use: z.optional(z.boolean()),
  why: z.optional(text),
  when: z.optional(text),
  by: z.optional(text),
  u: z.optional(fine.check(z.positive())),
}
const readings = z.array(reading).check(z.minLength(1), z.maxLength(1000))
/** How far the sag of a bracket is unsure, and which bracket: sets of a coupling that name the same one share its error. */
const bracket = { uSag: z.optional(fine.check(z.nonnegative())), bracket: z.optional(name) }
/** How far a place or a diameter is unsure. */
const uLength = z.optional(length.check(z.nonnegative()))

export const readingSet = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('rim'),
    rides: z.enum(['left', 'right']),
    at: length,
    sag: z.optional(fine),
    uAt: uLength,
    readings,
    ...bracket,
    ...setFields,
  }),
  z.strictObject({
    kind: z.literal('face'),
    rides: z.enum(['left', 'right']),
    diameter: length.check(z.positive()),
    face: z.optional(z.enum(['front', 'back'])),
    sag: z.optional(fine),
    uDiameter: uLength,
    readings,
    ...bracket,
    ...setFields,
  }),
  z.strictObject({
    kind: z.literal('gap'),
    diameter: length.check(z.positive()),
    uDiameter: uLength,
    readings,
    ...setFields,
  }),
  z.strictObject({
    kind: z.literal('spool'),
    end: z.enum(['left', 'right']),
    diameter: length.check(z.positive()),
    sag: z.optional(fine),
    uDiameter: uLength,
    readings,
    ...bracket,
    ...setFields,
  }),
  z.strictObject({
    kind: z.literal('line'),
    at: length,
    offset: z.optional(offsets),
    slope: z.optional(slopes),
    uSlope: z.optional(slope.check(z.positive())),
    ...setFields,
  }),
])
