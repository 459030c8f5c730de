import { withStages, type PlanAnswer } from '../engine/fieldwork/answer'
import { orderFor } from '../engine/fieldwork/orderFor'
import { foundLines } from '../mechanics/uncertainty/foundLines'
import type { TrainDocument } from '../document/schema'
import type { Train } from '../mechanics/train'
import type { Paper } from './page'
import { paperOf, type PaperSettings } from './paperOf'

/**
 * What can be put on paper at once of a plan that is on the screen, where nothing can be waited for:
 * the order of work is worked out, but no shims of the store and no readiness, and every page says so.
 */
export function quickPaper(
  document: TrainDocument,
  { train, answer }: { readonly train: Train; readonly answer: PlanAnswer },
  settings: PaperSettings,
): Paper {
  const steps = orderFor({ document, train }, foundLines(train), answer)
  const paper = paperOf({ document, train, answer: withStages(answer, { steps }) }, settings)
  return { ...paper, notice: 'NOT COMPLETE: for the whole work sheet use its own print button' }
}
