import { withReasons } from '../engine/explain/reasons'
import { solvesAll, holdsOf } from '../engine/holds/holdRows'
import { paperHtml } from '../engine/paper/html'
import { paperOf, type PaperSettings } from '../engine/paper/paperOf'
import { planRead } from '../engine/planTrain'
import { withReady } from '../engine/ready/withReady'
import { withSteps } from '../engine/steps/withSteps'
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

/** With more bodies than this the other choices of what to hold are left to `holds`: paper must not wait. */
const mostBodies = 7

export function sheetOf(
  read: { readonly document: TrainDocument; readonly train: Train },
  solver: Solver,
  settings: PaperSettings,
): Sheet {
  const { train } = read
  const plan = planRead(train, solver, { prices: false, packs: true })
  const reasoned = withReasons(read, plan, solver)
  const answer = withSteps(read, withReady(read, reasoned, solver))
  const { status } = answer
  if (status === 'stopped' || status === 'unproven')
    return { status: 'stopped', why: `no sheet without a plan that holds: ${answer.why ?? status}` }
  const few = solvesAll(train, { bodies: mostBodies })
  const paper = paperOf(
    {
      ...read,
      answer,
      ...(few && { holds: holdsOf(train, solver, { prices: false }) }),
    },
    settings,
  )
  return {
    status,
    html: paperHtml(paper),
    pages: paper.pages.length,
    revision: paper.revision,
    says: sentenceOf(train, answer).headline,
  }
}
