import { printOf } from './contentPrint'
import type { TrainDocument } from './schema'
import { trainMatch } from './trainMatch'
import { codeText, sheetMark, trainMark } from './typedCode'

/** The code that a print of a train carries: which train, which sheet of it, and which step comes next. */
export function paperCode(document: TrainDocument, step: number): string {
  const { name, site = '', machines } = document
  const match = trainMatch(
    name,
    site,
    machines.map(({ id }) => id),
  )
  return codeText({
    train: matchMark(match),
    sheet: sheetMark(printOf(JSON.stringify(document))),
    step,
  })
}

/** The mark of a train by what it is known by. */
export const matchMark = (match: string): string => trainMark(printOf(match))
