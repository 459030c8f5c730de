import * as z from 'zod/mini'
import { fine, length } from './quantities'
import { id, name, text } from './texts'

/** Shaft axes at places of the train against a straight line of the survey's own; what the numbers are: trainFile.md. */
const surveyPoint = z.strictObject({
  machine: id,
  x: length,
  axis: z.optional(z.enum(['left', 'right'])),
  z: z.optional(fine),
  y: z.optional(fine),
  u: z.optional(fine.check(z.positive())),
})

/** A survey of shaft axes, all its points against one line. */
export const survey = z.strictObject({
  id,
  name: z.optional(name),
  method: z.optional(text),
  u: z.optional(fine.check(z.positive())),
  use: z.optional(z.boolean()),
  joins: z.optional(z.boolean()),
  why: z.optional(text),
  when: z.optional(text),
  by: z.optional(text),
  points: z.array(surveyPoint).check(z.minLength(1), z.maxLength(40)),
})
