import type { TrainDocument } from '../../document/schema'
import { storageErrorText } from './database'
import type { Shelf } from './shelf'
import { onSheet } from './sheet'

/** What a job of the shelf would put on the sheet, without putting it there, or why it cannot. */
export async function documentOf(
  shelf: Shelf,
  id: string,
): Promise<{ readonly document: TrainDocument } | { readonly why: string }> {
  try {
    const loaded = await shelf.load(id)
    return loaded ? onSheet(loaded.head) : { why: 'its sheet is not there' }
  } catch (error) {
    return { why: storageErrorText(error) }
  }
}
