import * as z from 'zod/mini'
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

export const id = z.string().check(
  z.minLength(1),
  z.maxLength(100),
  z.refine((value) => value !== '__proto__', 'is not a usable id'),
  seenOnly,
)

/** What people call a thing. */
export const name = z.string().check(z.maxLength(200), seenOnly)
/** Most characters of a text on one line, and of one of several lines. */
export const longestText = 2_000
export const longestNote = 20_000
/** A remark beside a thing: a reason, a source, a date, who did it. */
export const text = z.string().check(z.maxLength(longestText))
/** A text of several lines. */
export const note = z.string().check(z.maxLength(longestNote))
