import * as z from 'zod/mini'
import { length } from './quantities'
import { readingSet } from './readingSchema'
import { id, name, note, text } from './texts'

/** Outages of a train as its file keeps them: the only definition of their shape. What they mean: trainFile.md. */

const sets = z.array(readingSet).check(z.minLength(1), z.maxLength(1000))

/** How a coupling was read when the train was opened, and when it was closed again; its planes as they were. */
const outageCoupling = z.strictObject({
  coupling: id,
  planes: z.tuple([length, length]),
  found: z.optional(sets),
  left: z.optional(sets),
})

export const outage = z.strictObject({
  id,
  name: z.optional(name),
  when: text.check(z.minLength(1)),
  by: z.optional(text),
  couplings: z.array(outageCoupling).check(z.minLength(1), z.maxLength(1000)),
  plan: z.optional(note),
  work: z.optional(note),
  hotCheck: z.optional(id),
  note: z.optional(note),
  seal: z.optional(text),
})
