import type { TrainDocument } from '../document/schema'
import type { Train } from '../mechanics/train'
import { workRecordOf } from '../document/work'
import { asFound } from '../mechanics/readings/asFound'
import type { PlanAnswer } from './work/answer'
import { orderOfWork } from './work/steps/orderOfWork'
import { motionsFrom } from './work/steps/pose'
import type { FootPack } from './work/steps/stepFeet'

/**
 * Adds the order of work to an answer that has a plan: by the real packs where they were worked out,
 * after the soft feet that its readiness names, in the order the record of the train asks for. An
 * answer without a plan stays as it is.
 */
export function withSteps(
  { document, train }: { readonly document: TrainDocument; readonly train: Train },
  answer: PlanAnswer,
): PlanAnswer {
  if (!answer.bodies) return answer
  const order = workRecordOf(document.record)?.order
  const motions = motionsFrom(train, answer.rounded?.bodies ?? answer.bodies)
  const steps = orderOfWork(train, train.couplings.map(asFound), motions, {
    packs: packsOf(answer),
    soft: (answer.ready?.softFoot ?? []).flatMap(({ body, shims, hold }) =>
      (shims ?? []).map(({ foot, shim }) => ({ body, foot, shim, hold })),
    ),
    provisional: answer.ready?.provisional === true,
    ...(order && { order }),
  })
  return { ...answer, steps }
}

/** Real packs of every foot, where the plan was rounded to them. */
function packsOf({ packs, rounded }: PlanAnswer): FootPack[] {
  if (!rounded?.bodies) return []
  return rounded.feet.map(({ body, foot, shim, packAfter }) => ({
    body,
    foot,
    change: shim,
    ...(packAfter !== undefined && { packAfter }),
    use: packs?.find((row) => row.body === body && row.foot === foot)?.use ?? [],
  }))
}
