import { paperHtml } from '../paper/html'
import type { PaperSettings } from '../paper/paperOf'
import { workSheet } from '../paper/workSheet'
import { sentenceOf } from '../engine/plan/sentence'
import type { Solver } from '../engine/lp/solver'
import type { ReadTrain } from '../engine/planningRun'

/** A work sheet as one file, or why there is none. */
export type SheetFile =
  | {
      readonly status: 'planned' | 'in-tolerance' | 'impossible'
      readonly html: string
      readonly pages: number
      readonly revision: string
      readonly code: string
      readonly says: string
    }
  | { readonly status: 'stopped'; readonly why: string }

export function sheetFileOf(read: ReadTrain, solver: Solver, settings: PaperSettings): SheetFile {
  const sheet = workSheet(read, solver, settings)
  if (sheet.status === 'stopped') return sheet
  const { status, answer, paper } = sheet
  return {
    status,
    html: paperHtml(paper),
    pages: paper.pages.length,
    revision: paper.revision,
    code: paper.code ?? '',
    says: sentenceOf(read.train, answer).headline,
  }
}
