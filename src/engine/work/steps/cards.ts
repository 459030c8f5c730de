import { showsNought } from '../../../language/sides'
import type { Train } from '../../../mechanics/train'
import { micrometresPer } from '../../../mechanics/units'
import type { DialAnswer, StepAnswer, StepFootAnswer, StepsAnswer } from './answer'

/** One thing to do at one place, or one hold point: what a tablet beside the machine shows at a time. */
export type WorkCard = FootCard | ReadCard

interface CardCommon {
  /** Stays the same while the plan does. */
  readonly id: string
  /** Index of its step. */
  readonly step: number
  readonly body: string
  readonly cautions: readonly string[]
  readonly hold: string | undefined
}

export interface FootCard extends CardCommon {
  readonly kind: 'foot'
  readonly way: 'shim' | 'side' | 'axial'
  /** The foot, or the feet of a row that slide together; the one with the dial first. */
  readonly feet: readonly string[]
  /** + is up, toward 3 o'clock, to the right; the document's fine unit. */
  readonly amount: number
  readonly foot: StepFootAnswer
  readonly dials: readonly DialAnswer[]
}

export interface ReadCard extends CardCommon {
  readonly kind: 'read'
  readonly expected: StepAnswer['expected']
  readonly judge: StepAnswer['judge']
}

/** The steps of a plan as cards, in their order; a step's hold point stands on its last card. */
export function workCards(train: Train, { steps }: StepsAnswer): WorkCard[] {
  return steps.flatMap((step, index): WorkCard[] => {
    const common = { step: index, body: step.body, cautions: step.cautions }
    if (step.kind === 'read')
      return [
        {
          ...common,
          id: step.id,
          kind: 'read' as const,
          hold: step.hold,
          expected: step.expected,
          judge: step.judge,
        },
      ]
    const groups = step.kind === 'lateral' ? rowsOf(train, step) : step.feet.map((foot) => [foot])
    const cards = groups.flatMap((feet): FootCard[] => {
      const way = wayOf(step)
      const dialled = feet.find(({ foot }) => step.dials.some((dial) => dial.foot === foot))
      const foot = dialled ?? feet[0]
      const amount = foot?.[way]
      if (!foot || amount === undefined) return []
      // a foot that a tilt turns about has nothing done to it
      if (showsNought(amount * micrometresPer[train.units.fine], train)) return []
      const ids = [foot.foot, ...feet.filter((one) => one !== foot).map((one) => one.foot)]
      return [
        {
          ...common,
          id: `${step.id} ${foot.foot}`,
          kind: 'foot' as const,
          way,
          feet: ids,
          amount,
          foot,
          dials: step.dials.filter((dial) => dial.foot === undefined || ids.includes(dial.foot)),
          hold: undefined,
        },
      ]
    })
    return cards.map((card, i) => (i === cards.length - 1 ? { ...card, hold: step.hold } : card))
  })
}

const wayOf = ({ kind }: StepAnswer): FootCard['way'] =>
  kind === 'axial' ? 'axial' : kind === 'lateral' ? 'side' : 'shim'

/** Feet at one x slide as one. */
function rowsOf(train: Train, step: StepAnswer): StepFootAnswer[][] {
  const body = train.bodies.find(({ id }) => id === step.body)
  if (!body) return step.feet.map((foot) => [foot])
  return body.rows
    .map((row) =>
      row.feet.flatMap((f) => step.feet.find(({ foot }) => foot === body.feet[f]?.id) ?? []),
    )
    .filter((feet) => feet.length > 0)
}
