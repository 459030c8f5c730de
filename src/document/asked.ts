import { valueAt, withList } from './place'
import { placeWords } from './placeWords'
import type { TrainDocument } from './schema'
import { unusualOf, type Unusual } from './unusual'
import { workRecordOf } from './work'

/**
 * Unusual values are asked about where they stand, once, and the plan says so until somebody has said that they
 * are right. The answer stands in the record of the file, with the value it was given for: another value asks anew.
 */

const listPath = ['record', 'sure'] as const

/** What is asked about and not answered. */
export function askedOf(document: TrainDocument): Unusual[] {
  const unusual = unusualOf(document)
  if (unusual.length === 0) return []
  const sure = workRecordOf(document.record)?.sure ?? []
  return unusual.filter(
    ({ at, value }) => !sure.some((one) => one.at === at && one.value === value),
  )
}

/** The question in the cell: "12.7 mm at the dial: more than 10 mm. Is that right?" */
export const questionWords = ({ said, beyond }: Unusual): string =>
  `${said}: ${beyond}. Is that right?`

/** The same for whoever follows the plan, with the place: nobody has answered. */
export function askedWords(document: TrainDocument, asked: Unusual): string {
  const { at, said, beyond } = asked
  return `${placeWords(document, at)}: ${said}, ${beyond}; nobody has said that this is right`
}

/** The document with the answer that a value is right. */
export const saidRight = (document: TrainDocument, { at, value }: Unusual): TrainDocument =>
  withList(document, listPath, (list) => [
    ...list.filter((one) => valueAt(one, ['at']) !== at),
    { at, value },
  ])
