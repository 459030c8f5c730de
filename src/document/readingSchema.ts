import { z } from 'zod'
import { fine, hour, length, slope } from './quantities'
import { name, text } from './texts'

/** Reading sets as the train file has them, with how unsure each is: the only definition of their shape. */

export const offsets = z.strictObject({ y: fine.optional(), z: fine.optional() })
export const slopes = z.strictObject({ y: slope.optional(), z: slope.optional() })

/** The hour, and what the dial showed there. */
const reading = z.tuple([hour.gt(0).lte(12), fine])
const setFields = {
  use: z.boolean().optional(),
  why: text.optional(),
  when: text.optional(),
  by: text.optional(),
  u: fine.positive().optional(),
}
const readings = z.array(reading).min(1).max(1000)
/** How far the sag of a bracket is unsure, and which bracket: sets of a coupling that name the same one share its error. */
const bracket = { uSag: fine.nonnegative().optional(), bracket: name.optional() }
/** How far a place or a diameter is unsure. */
const uLength = length.nonnegative().optional()

export const readingSet = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('rim'),
    rides: z.enum(['left', 'right']),
    at: length,
    sag: fine.optional(),
    uAt: uLength,
    readings,
    ...bracket,
    ...setFields,
  }),
  z.strictObject({
    kind: z.literal('face'),
    rides: z.enum(['left', 'right']),
    diameter: length.positive(),
    face: z.enum(['front', 'back']).optional(),
    sag: fine.optional(),
    uDiameter: uLength,
    readings,
    ...bracket,
    ...setFields,
  }),
  z.strictObject({
    kind: z.literal('gap'),
    diameter: length.positive(),
    uDiameter: uLength,
    readings,
    ...setFields,
  }),
  z.strictObject({
    kind: z.literal('spool'),
    end: z.enum(['left', 'right']),
    diameter: length.positive(),
    sag: fine.optional(),
    uDiameter: uLength,
    readings,
    ...bracket,
    ...setFields,
  }),
  z.strictObject({
    kind: z.literal('line'),
    at: length,
    offset: offsets.optional(),
    slope: slopes.optional(),
    uSlope: slope.positive().optional(),
    ...setFields,
  }),
])
