import { DamagedError, damageOf } from './damaged'
import { memoized } from './kept'
import type { TrainDocument } from '../../document/schema'
import type { OnSheet } from './port'
import type { SavedSheet } from './records'

/** What the shelf keeps of a page's sheet. */
export const savedSheetOf = ({ document, entries, hand }: OnSheet): SavedSheet => ({
  text: textOf(document),
  entries,
  ...(hand && { hand }),
})

/** Written out once: what changes may be the entries or the hand plan alone. */
const textOf = memoized((document: TrainDocument) => JSON.stringify(document))

/** What a sheet of the shelf puts on the page; throws a `DamagedError` where its text is no train. */
export function onSheet({ text, entries, hand }: SavedSheet): OnSheet {
  const damage = damageOf(text)
  if (damage !== undefined) throw new DamagedError(damage)
  return { document: unfinished(JSON.parse(text)) as TrainDocument, entries, hand }
}

/**
 * A list keeps the places of numbers that are not entered yet, and JSON writes those as null: on the
 * sheet they are not there. What a record holds stays as it is.
 */
export function unfinished(value: unknown): unknown {
  if (Array.isArray(value)) return value.map((item) => unfinished(item ?? undefined))
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(
    Object.entries(value).map(([key, inside]) => [
      key,
      key === 'record' ? inside : unfinished(inside),
    ]),
  )
}
