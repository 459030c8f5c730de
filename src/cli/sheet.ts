import { paperHtml } from '../engine/paper/html'
import type { PaperSettings } from '../engine/paper/paperOf'
import { workSheet } from '../engine/paper/workSheet'
import { sentenceOf } from '../engine/sheet/sentence'
import type { Solver } from '../engine/solver/solver'
import type { TrainDocument } from '../engine/train/document'
import type { Train } from '../engine/train/model'

/** A work sheet as one file, or why there is none. */
export type Sheet =
  | {
      readonly status: 'planned' | 'in-tolerance' | 'impossible'
      readonly html: string
      readonly pages: number
      readonly revision: string
      readonly says: string
    }
  | { readonly status: 'stopped'; readonly why: string }

export function sheetOf(
  read: { readonly document: TrainDocument; readonly train: Train },
  solver: Solver,
  settings: PaperSettings,
): Sheet {
  const sheet = workSheet(read, solver, settings)
  if (sheet.status === 'stopped') return sheet
  const { status, answer, paper } = sheet
  return {
    status,
    html: paperHtml(paper),
    pages: paper.pages.length,
    revision: paper.revision,
    says: sentenceOf(read.train, answer).headline,
  }
}
