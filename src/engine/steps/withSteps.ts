import type { TrainDocument } from '../train/document'
import type { Train } from '../train/model'
import { workRecordOf } from '../train/work'
import { asFound } from '../readings/asFound'
import type { PlanAnswer } from '../plan/answer'
import { orderOfWork, type OrderOptions } from './orderOfWork'
import { motionsFrom } from './pose'

/**
 * Adds the order of work to an answer that has a plan: by the real packs where they were worked out,
 * in the order the record of the train asks for. An answer without a plan stays as it is.
 */
export function withSteps(
  { document, train }: { readonly document: TrainDocument; readonly train: Train },
  answer: PlanAnswer,
  options: Pick<OrderOptions, 'soft'> = {},
): PlanAnswer {
  if (!answer.bodies) return answer
  const order = workRecordOf(document.record)?.order
  const motions = motionsFrom(train, answer.bodies)
  const steps = orderOfWork(train, train.couplings.map(asFound), motions, {
    ...options,
    ...(order && { order }),
  })
  return { ...answer, steps }
}
