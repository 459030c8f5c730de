import * as z from 'zod/mini'
import { length } from './quantities'

/** From where to where along the train, low end first. */
const along = z.tuple([length, length])

/** How the rotor at one side of a coupling lies in its bearings endwise. */
const rotor = z.strictObject({ centre: z.optional(length), float: z.optional(along) })

/** The gap between the shaft ends of a coupling, and what else bounds it as it runs. */
export const axialGap = z.strictObject({
  found: length,
  want: length,
  tolerance: length.check(z.positive()),
  u: z.optional(length.check(z.nonnegative())),
  stretch: z.optional(along),
  rotors: z.optional(z.strictObject({ left: z.optional(rotor), right: z.optional(rotor) })),
})
