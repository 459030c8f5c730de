import * as z from 'zod/mini'
import { fine, fromSize, length, plain } from './quantities'

/** The shims of the store, and how packs may be made of them. */
const shims = z.strictObject({
  step: fine.check(z.positive()),
  stock: z.array(fine.check(z.positive())).check(z.minLength(1), z.maxLength(1000)),
  most: z.optional(plain.check(z.int(), z.positive(), z.lte(100))),
  rebuild: z.optional(z.boolean()),
  flat: z.optional(fine.check(z.nonnegative())),
})

/** Asks for the chance that every state is in; how far the work is unsure. */
const sure = z.strictObject({
  shim: z.optional(fine.check(z.nonnegative())),
  slide: z.optional(fine.check(z.nonnegative())),
  foot: z.optional(length.check(z.nonnegative())),
  chance: z.optional(plain.check(z.gt(0), z.lt(1))),
  draws: z.optional(plain.check(z.int(), z.gte(100), z.lte(100_000))),
  seed: z.optional(plain.check(z.int(), z.nonnegative(), z.lte(4_294_967_295))),
})

/** How a train is to be planned: the share asked for, what a move costs, what is kept in hand, what can be made. */
export const planSettings = z.strictObject({
  share: z.optional(plain.check(z.gt(0), z.lte(1))),
  weights: z.optional(
    z.strictObject({
      shim: z.optional(plain.check(z.nonnegative())),
      side: z.optional(plain.check(z.nonnegative())),
      axial: z.optional(plain.check(z.nonnegative())),
    }),
  ),
  guard: z.optional(plain.check(z.nonnegative(), z.lte(10))),
  worst: z.optional(z.boolean()),
  sure: z.optional(sure),
  reserve: z.optional(fine.check(z.nonnegative())),
  shims: z.optional(shims),
  leave: z.optional(fine.check(z.nonnegative())),
  stage: z.optional(fromSize(fine.check(z.positive()), { value: 1, said: '1 µm' })),
  slip: z.optional(fine.check(z.positive())),
})
