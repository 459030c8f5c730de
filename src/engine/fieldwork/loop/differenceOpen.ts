import * as z from 'zod/mini'

/** What a page of the record keeps of a comparison, as far as it is asked for here. */
const compared = z.object({
  comparison: z.object({ meaning: z.object({ kind: z.string(), words: z.string() }) }),
})

/**
 * What the readings of a round were said to mean where they were not what was expected, from the page that it left;
 * undefined where they were, or where nothing was compared.
 */
export function differenceOpen(content: unknown): string | undefined {
  const meaning = compared.safeParse(content).data?.comparison.meaning
  return meaning === undefined || meaning.kind === 'within doubt' ? undefined : meaning.words
}
