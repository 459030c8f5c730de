import { hasMoves } from '../engine/plan/moves'
import type { Instruction } from '../engine/fieldwork/steps/instructions'
import type { Drawn } from './job'
import type { Block, Chapter, StepCard } from './page'

/** The steps in their order, with what to watch, where to stop, and what the dials should show then. */
export function orderPages({ answer, instructions }: Drawn): Chapter[] {
  const steps = hasMoves(answer) ? answer.steps : undefined
  if (!steps || instructions.length === 0) return []
  return [
    {
      section: 'order',
      title: 'Order of work',
      blocks: [
        { kind: 'text', look: 'plain', text: steps.words },
        ...(steps.unknown.length === 0
          ? []
          : [
              {
                kind: 'text',
                look: 'strong',
                text: `The order asked for names what is no step of this plan: ${steps.unknown.join(', ')}.`,
              } as const,
            ]),
        ...instructions.map((instruction): Block => ({
          kind: 'step',
          step: stepCard(instruction),
        })),
      ],
    },
  ]
}

function stepCard(instruction: Instruction): StepCard {
  const { id, number, words, breaks, cautions, dials, readings, stop } = instruction
  return {
    ...{ id, number, words, breaks, cautions, dials },
    expected: readings,
    ...(stop !== undefined && { stop }),
  }
}
