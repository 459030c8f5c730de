import type { Train } from '../mechanics/train'
import type { StepAnswer, StepsAnswer } from '../engine/work/steps/answer'
import { heading, paragraph } from './layout'

/** The order of work, a step a paragraph; nothing where there is nothing to do. */
export function stepsText(train: Train, { steps, words, unknown }: StepsAnswer): string[] {
  if (steps.length === 0) return []
  return [
    ...heading('ORDER OF WORK'),
    ...paragraph(words, '  '),
    ...unknown.flatMap((id) =>
      paragraph(`The order asked for names ${id}: no such step in this plan.`, '  '),
    ),
    '',
    ...steps.flatMap((step, i) => stepText(train, step, i + 1)),
  ]
}

function stepText(train: Train, step: StepAnswer, number: number): string[] {
  const rest = [
    ...(step.hold === undefined ? [] : [step.hold]),
    ...step.cautions.filter((caution) => caution.startsWith('STOP')),
    ...step.breaks.map(({ words, instead }) => `LIMIT PASSED: ${words} ${instead}`),
    ...(step.kind === 'read' ? judgeLines(train, step) : []),
  ]
  return [
    ...paragraph(step.words, `  ${String(number).padStart(2)}. `),
    ...rest.flatMap((line) => paragraph(line, '      ')),
  ]
}

/** Couplings that the readings of this hold point cannot be judged by. */
const judgeLines = (train: Train, { judge }: StepAnswer): string[] =>
  judge
    .filter(({ why }) => why !== '')
    .map(({ coupling, why }) => {
      const name = train.couplings.find(({ id }) => id === coupling)?.name ?? coupling
      return `Not to be judged yet: ${name}; ${why}.`
    })
