import * as z from 'zod/mini'
import { growthPoint } from './growthSchema'
import { time } from './quantities'
import { readingSet } from './readingSchema'
import { id, name, text } from './texts'

/** Hot checks as the train file has them: the only definition of their shape. What they mean: trainFile.md. */

/** A coupling read so many minutes after the stop, by sets of the kinds that couplings have. */
const readAfter = z.strictObject({
  after: time.check(z.nonnegative()),
  found: z.array(readingSet).check(z.minLength(1), z.maxLength(1000)),
})

/** What is known of how fast the train cools: its time constant. */
const decay = z.strictObject({
  time: time.check(z.positive()),
  u: z.optional(time.check(z.nonnegative())),
})

const hotCoupling = z.strictObject({
  coupling: id,
  decay: z.optional(decay),
  times: z.array(readAfter).check(z.minLength(1), z.maxLength(20)),
})

/** How far a machine moved from off line to running: growth points, of what was measured across the train. */
const movedMachine = z.strictObject({
  machine: id,
  against: z.optional(text),
  points: z
    .array(z.pick(growthPoint, { at: true, axis: true, rise: true, side: true, u: true }))
    .check(z.minLength(1), z.maxLength(10)),
})

export const hotCheck = z.strictObject({
  id,
  name: z.optional(name),
  state: id,
  use: z.optional(z.boolean()),
  why: z.optional(text),
  when: z.optional(text),
  by: z.optional(text),
  datum: z.optional(id),
  couplings: z.optional(z.array(hotCoupling).check(z.maxLength(40))),
  moved: z.optional(z.array(movedMachine).check(z.maxLength(40))),
})
