import * as z from 'zod/mini'
import { expansion, fine, length, temperature } from './quantities'
import { text } from './texts'

/** Growth as the train file has it: the only definition of its shape. */

export const range = z.tuple([fine, fine])

export const growthPoint = z.strictObject({
  at: length,
  axis: z.optional(z.enum(['left', 'right'])),
  rise: z.optional(fine),
  side: z.optional(fine),
  axial: z.optional(fine),
  heat: z.optional(
    z.strictObject({
      height: length,
      expansion,
      from: temperature,
      to: temperature,
      material: z.optional(text),
    }),
  ),
  u: z.optional(fine.check(z.nonnegative())),
  range: z.optional(
    z.strictObject({
      rise: z.optional(range),
      side: z.optional(range),
      axial: z.optional(range),
    }),
  ),
  source: z.optional(z.enum(['given', 'measured'])),
  use: z.optional(z.boolean()),
  when: z.optional(text),
  by: z.optional(text),
  why: z.optional(text),
})
