import type { TrainDocument } from './schema'

/** The end from which clock faces of the document are seen. */
export const seenFromWords = (document: TrainDocument): string =>
  `hours as seen from the ${document.clock.seenFrom} end`
