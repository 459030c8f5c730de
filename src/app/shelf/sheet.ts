import type { TrainDocument } from '../../engine/train/document'
import type { OnSheet } from './port'
import type { Sheet } from './records'

/** What the shelf keeps of a page's sheet. */
export const sheetOf = ({ document, entries }: OnSheet): Sheet => ({
  text: JSON.stringify(document),
  entries,
})

/** What a sheet of the shelf puts on the page. */
export const onSheet = ({ text, entries }: Sheet): OnSheet => ({
  document: JSON.parse(text) as TrainDocument,
  entries,
})
