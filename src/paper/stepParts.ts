import type { StepCard } from './page'

/**
 * A step that goes on over the page: what is done, with its cautions; and what must be seen then, with the places to sign.
 * Undefined where nothing has to be seen: such a step is not parted.
 */
export function partedStep(step: StepCard): readonly [StepCard, StepCard] | undefined {
  const { stop, ...rest } = step
  if (stop === undefined && step.expected.length === 0) return undefined
  const what =
    stop === undefined ? 'what it should show' : 'what it should show, and its stop point'
  return [
    {
      ...rest,
      expected: [],
      sign: [],
      over: `Step ${step.number} goes on over the page: ${what}.`,
    },
    {
      ...step,
      words: `Step ${step.number}, continued`,
      ...{ breaks: [], before: [], cautions: [], lifts: [], dials: [] },
    },
  ]
}
