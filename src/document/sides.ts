import type { TrainDocument } from './schema'

/** "toward the river": what a document calls a side, + toward 3 o'clock; the clock hour where it has no name. */
export function towardSide(document: TrainDocument, y: number): string {
  const named = (y > 0 ? document.sides?.three : document.sides?.nine)?.trim() ?? ''
  const name = named === '' ? `${y > 0 ? 3 : 9} o'clock` : named
  return /^(to|toward|towards)\s/i.test(name) ? name : `toward ${name}`
}

/** The end from which clock faces of the document are seen. */
export const seenFromWords = (document: TrainDocument): string =>
  `hours as seen from the ${document.clock.seenFrom} end`
