import { z } from 'zod'
import { firstUnseen } from '../language/harmless'

/**
 * The texts of the train file, each with the most characters it may have: far more than anybody writes there, and
 * few enough that every sheet, table and print can be laid out.
 */

/** Refuses characters that are not seen but turn, hide or steer what stands around them. */
function seenOnly(context: z.core.ParsePayload<string>): void {
  const found = firstUnseen(context.value)
  if (found)
    context.issues.push({
      code: 'custom',
      input: context.value,
      message: `character ${found.place} (${found.code}) is one that nobody sees; names and ids have visible characters and spaces alone`,
    })
}

export const id = z
  .string()
  .min(1)
  .max(100)
  .refine((value) => value !== '__proto__', 'is not a usable id')
  .check(seenOnly)

/** What people call a thing. */
export const name = z.string().max(200).check(seenOnly)
/** Most characters of a text on one line, and of one of several lines. */
export const longestText = 2_000
export const longestNote = 20_000
/** A remark beside a thing: a reason, a source, a date, who did it. */
export const text = z.string().max(longestText)
/** A text of several lines. */
export const note = z.string().max(longestNote)
