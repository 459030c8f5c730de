import * as z from 'zod/mini'
import { fine, length, plain } from './quantities'
import { offsets } from './readingSchema'
import { id, text } from './texts'

/** The air gap at one place of a stator, at four places around. */
const airGap = z.strictObject({
  id,
  at: length,
  top: fine.check(z.positive()),
  three: fine.check(z.positive()),
  bottom: fine.check(z.positive()),
  nine: fine.check(z.positive()),
})

/** A foot of the stator's own, shimmed and slid apart from the machine's. */
const statorFoot = z.strictObject({ id, x: length })

/** A stator that stands on feet of its own around a rotor in pedestal bearings. */
export const stator = z.strictObject({
  airGaps: z.optional(z.array(airGap).check(z.maxLength(20))),
  feet: z.optional(z.array(statorFoot).check(z.maxLength(100))),
  aim: z.optional(offsets),
  limit: z.optional(plain.check(z.gt(0), z.lte(1))),
  basis: z.optional(text),
  use: z.optional(z.boolean()),
  why: z.optional(text),
  when: z.optional(text),
  by: z.optional(text),
})

export type StatorDocument = z.infer<typeof stator>
