import type { Train } from '../mechanics/train'
import type { StepAnswer } from '../engine/work/steps/answer'
import type { Drawn } from './job'
import type { Block, Chapter, StepCard } from './page'
import { expectedLines } from '../text/stepReadings'
import { stepDials } from '../text/stepDials'
import { holdWords, sentence } from './words'

/** The steps in their order, with what to watch, where to stop, and what the dials should show then. */
export function orderPages({ train, answer }: Drawn): Chapter[] {
  const { steps } = answer
  if (!steps || steps.steps.length === 0) return []
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
        ...steps.steps.map((step, i): Block => ({
          kind: 'step',
          step: stepCard(train, step, i + 1),
        })),
      ],
    },
  ]
}

function stepCard(train: Train, step: StepAnswer, number: number): StepCard {
  return {
    id: step.id,
    number,
    words: step.words,
    breaks: step.breaks.map(({ words, instead }) => `LIMIT PASSED: ${words} ${instead}`),
    cautions: step.cautions.map(sentence),
    dials: stepDials(train, step),
    expected: expectedLines(train, step),
    ...(step.hold !== undefined && { hold: sentence(holdWords(step.hold)) }),
  }
}
