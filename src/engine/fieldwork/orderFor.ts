import type { TrainDocument } from '../../document/schema'
import { workRecordOf } from '../../document/work'
import type { AsFound } from '../../mechanics/readings/asFound'
import type { Train } from '../../mechanics/train'
import { hasMoves } from '../plan/moves'
import { madeOf, type RoundingMade } from '../rounding/answer'
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
  if (!hasMoves(answer)) return undefined
  const order = workRecordOf(document.record)?.order
  const rounded = answer.status === 'planned' ? madeOf(answer.rounded) : undefined
  const motions = motionsFrom(train, (rounded ?? answer).bodies)
  return orderOfWork(train, found, motions, {
    packs: rounded ? packsOf(rounded) : [],
    soft: (answer.ready?.softFoot ?? []).flatMap(({ body, shims, hold }) =>
      (shims ?? []).map(({ foot, shim }) => ({ body, foot, shim, hold })),
    ),
    provisional: answer.ready?.provisional === true,
    ...(order && { order }),
  })
}

/** Real packs of every foot. */
const packsOf = ({ packs, feet }: RoundingMade): FootPack[] =>
  feet.map(({ body, foot, shim, packAfter }) => {
    const pack = packs.find((row) => row.body === body && row.foot === foot)
    return {
      body,
      foot,
      change: shim,
      ...(packAfter !== undefined && { packAfter }),
      out: pack?.out ?? [],
      use: pack?.use ?? [],
    }
  })
