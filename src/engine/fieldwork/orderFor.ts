import type { TrainDocument } from '../../document/schema'
import { workRecordOf } from '../../document/work'
import type { AsFound } from '../../mechanics/readings/asFound'
import type { Train } from '../../mechanics/train'
import type { PlanAnswer } from './answer'
import type { StepsAnswer } from './steps/answer'
import { orderOfWork } from './steps/orderOfWork'
import { motionsFrom } from './steps/pose'
import type { FootPack } from './steps/stepFeet'

/**
 * The order of work of an answer that has a plan: by the real packs where they were worked out, after
 * the soft feet that its readiness names, in the order the record of the train asks for.
 * @returns undefined for an answer without a plan
 */
export function orderFor(
  { document, train }: { readonly document: TrainDocument; readonly train: Train },
  found: readonly AsFound[],
  answer: PlanAnswer,
): StepsAnswer | undefined {
  if (!answer.bodies) return undefined
  const order = workRecordOf(document.record)?.order
  const motions = motionsFrom(train, answer.rounded?.bodies ?? answer.bodies)
  return orderOfWork(train, found, motions, {
    packs: packsOf(answer),
    soft: (answer.ready?.softFoot ?? []).flatMap(({ body, shims, hold }) =>
      (shims ?? []).map(({ foot, shim }) => ({ body, foot, shim, hold })),
    ),
    provisional: answer.ready?.provisional === true,
    ...(order && { order }),
  })
}

/** Real packs of every foot, where the plan was rounded to them. */
function packsOf({ packs, rounded }: PlanAnswer): FootPack[] {
  if (!rounded?.bodies) return []
  return rounded.feet.map(({ body, foot, shim, packAfter }) => {
    const pack = packs?.find((row) => row.body === body && row.foot === foot)
    return {
      body,
      foot,
      change: shim,
      ...(packAfter !== undefined && { packAfter }),
      out: pack?.out ?? [],
      use: pack?.use ?? [],
    }
  })
}
