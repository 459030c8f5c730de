import { workSheet } from '../paper/workSheet'
import { placeWords } from '../document/placeWords'
import type { Refusal } from '../document/refusal'
import type { TrainDocument } from '../document/schema'
import { faultWords } from '../document/words/faultWords'
import { readTrain } from '../document/readTrain'
import { glpkSolver } from '../solvers/glpk'
import type { PaperReply, PaperRequest } from './paperMessages'

/** Where and why, in the words of the sheet. */
function refusalWords(document: unknown, refusal: Refusal): string {
  const train = document as TrainDocument
  return `${placeWords(train, refusal.at)}: ${faultWords(train, refusal)}`
}

/** Works out one work sheet, with all that belongs on paper. */
export async function layPaper({
  document,
  size,
  print,
  date,
  solver,
}: PaperRequest): Promise<PaperReply> {
  try {
    const read = readTrain(document)
    if (!read.ok) {
      const [first] = read.refused
      return { kind: 'none', why: first ? refusalWords(document, first) : 'the file is refused' }
    }
    const sheet = workSheet(read, await glpkSolver(solver), { size, print, date })
    return sheet.status === 'stopped'
      ? { kind: 'none', why: sheet.why }
      : { kind: 'paper', paper: sheet.paper }
  } catch (error) {
    return { kind: 'none', why: error instanceof Error ? error.message : String(error) }
  }
}
