import type { Train } from '../../../mechanics/train'
import type { DialAnswer } from './answer'
import type { FootInstruction, Instruction } from './instructions'
import { stopReadings, type StopGroup } from './stopReadings'

/** One thing to do at one place, or one stop point: what a tablet beside the machine shows at a time. */
export type WorkCard = FootStepCard | ReadCard

interface CardCommon {
  /** Stays the same while the plan does. */
  readonly id: string
  /** Its step, as every face numbers and words it. */
  readonly instruction: Instruction
  /** What must be seen before the next step; on the last card of a step. */
  readonly stop: string | undefined
}

export interface FootStepCard extends CardCommon {
  readonly kind: 'foot'
  /** The foot, or the feet of a row that slide together; the one with the dial first. */
  readonly feet: readonly string[]
  readonly foot: FootInstruction
  readonly dials: readonly DialAnswer[]
}

export interface ReadCard extends CardCommon {
  readonly kind: 'read'
  /** What is read there, number by number. */
  readonly groups: readonly StopGroup[]
}

/**
 * The steps of a plan as cards, in their order. A step's stop point stands on its last card; where something is to be
 * read there, that is a card of its own.
 */
export function workCards(train: Train, instructions: readonly Instruction[]): WorkCard[] {
  return instructions.flatMap((instruction): WorkCard[] => {
    const { id, kind, stop, step } = instruction
    const common = { instruction, stop: undefined }
    const atStop = { instruction, stop }
    const read = { ...atStop, kind: 'read' as const, groups: stopReadings(train, step) }
    if (kind === 'read') return [{ ...read, id }]
    const groups =
      kind === 'lateral' ? rowsOf(train, instruction) : instruction.feet.map((foot) => [foot])
    const cards = groups.flatMap((feet): FootStepCard[] => {
      const dialled = feet.find(({ foot }) => step.dials.some((dial) => dial.foot === foot))
      const foot = dialled ?? feet[0]
      // a foot that a tilt turns about has nothing done to it
      if (!foot?.moves) return []
      const ids = [foot.foot, ...feet.filter((one) => one !== foot).map((one) => one.foot)]
      return [
        {
          ...common,
          id: `${id} ${foot.foot}`,
          kind: 'foot' as const,
          feet: ids,
          foot,
          dials: step.dials.filter((dial) => dial.foot === undefined || ids.includes(dial.foot)),
        },
      ]
    })
    if (stop !== undefined && read.groups.length > 0)
      return [...cards, { ...read, id: `${id} stop` }]
    return cards.map((card, i) => (i === cards.length - 1 ? { ...card, ...atStop } : card))
  })
}

/** Feet at one x slide as one; rows in the order in which the step moves them. */
function rowsOf(train: Train, { body: id, feet }: Instruction): FootInstruction[][] {
  const body = train.bodies.find((one) => one.id === id)
  if (!body) return feet.map((foot) => [foot])
  const rowOf = ({ foot }: FootInstruction) =>
    body.rows.findIndex((row) => row.feet.some((f) => body.feet[f]?.id === foot))
  const rows = new Map<number, FootInstruction[]>()
  for (const foot of feet) rows.set(rowOf(foot), [...(rows.get(rowOf(foot)) ?? []), foot])
  return [...rows.values()]
}
