import { displayedSure, outsideTheModel } from '../engine/chance/sentence'
import type { SureAnswer } from '../engine/chance/answer'
import type { PlanAnswer } from '../engine/fieldwork/answer'
import type { Train } from '../mechanics/train'
import { sureParts } from '../text/sureParts'
import type { Block } from './page'

/** How sure the plan is that is worked by; undefined where nobody worked it out. */
const sureOf = (plan: PlanAnswer): SureAnswer | undefined =>
  'sure' in plan ? displayedSure(plan.sure) : undefined

/** The chance of the plan in one sentence; nothing of a train without one. */
export function sureLine(train: Train, plan: PlanAnswer): Block[] {
  const sure = sureOf(plan)
  if (!sure?.all) return []
  return [{ kind: 'text', look: 'plain', text: sureParts(train, sure).sentence }]
}

/** What the chance hangs on, what would add to it, and the usual values that it rests on. */
export function sureBlocks(train: Train, plan: PlanAnswer): Block[] {
  const sure = sureOf(plan)
  if (!sure) return []
  const { sentence, lines, weak, buys, assumed } = sureParts(train, sure)
  const alone =
    weak.length === 0
      ? []
      : [
          `Each alone: ${weak.map(({ coupling, state, chance }) => `${coupling}, ${state} ${chance}`).join('; ')}.`,
        ]
  return [
    {
      kind: 'heading',
      text: 'How sure',
      aside: `${sure.draws} draws of all errors, seed ${sure.seed}`,
    },
    { kind: 'list', look: 'dash', items: [sentence, ...alone, ...lines, outsideTheModel(train)] },
    ...(buys.length === 0
      ? []
      : [
          {
            kind: 'heading' as const,
            text: 'What would add most',
            aside: 'times are common practice',
          },
          { kind: 'list' as const, look: 'dash' as const, items: buys },
        ]),
    ...(assumed.length === 0
      ? []
      : [
          {
            kind: 'heading' as const,
            text: 'Usual uncertainties',
            aside: 'where none were entered: one standard uncertainty each',
          },
          {
            kind: 'text' as const,
            look: 'plain' as const,
            text: `${assumed.map(({ what, value }) => `${what}: ${value}`).join('; ')}.`,
          },
        ]),
  ]
}
