import type { Train } from '../mechanics/train'
import type { StepsAnswer } from '../engine/fieldwork/steps/answer'
import { instructionsOf, type Instruction } from '../engine/fieldwork/steps/instructions'
import { expectedAre } from '../engine/fieldwork/steps/expectedWords'
import { liftsTitle } from '../engine/fieldwork/steps/poseAnswers'
import { heading, paragraph } from './layout'

/** The order of work, a step a paragraph; nothing where there is nothing to do. */
export function stepsText(train: Train, steps: StepsAnswer): string[] {
  const instructions = instructionsOf(train, steps)
  if (instructions.length === 0) return []
  return [
    ...heading('ORDER OF WORK'),
    ...paragraph(steps.words, '  '),
    ...(instructions.some(({ readings }) => readings.length > 0)
      ? paragraph(expectedAre, '  ')
      : []),
    ...steps.unknown.flatMap((id) =>
      paragraph(`The order asked for names ${id}: no such step in this plan.`, '  '),
    ),
    '',
    ...instructions.flatMap(stepText),
  ]
}

/** What can hurt stands before what to read, as it does at the machine. */
function stepText(instruction: Instruction): string[] {
  const { number, words, feet, breaks, before, cautions, lifts, dials, readings, stop } =
    instruction
  const recipes = feet.flatMap(({ foot, recipe }) =>
    recipe === undefined ? [] : [`Foot ${foot}: ${recipe}.`],
  )
  const list = (title: string, lines: readonly string[]) =>
    lines.length === 0
      ? []
      : [
          ...paragraph(`${title}:`, '      '),
          ...lines.flatMap((line) => paragraph(line, '        - ')),
        ]
  return [
    ...paragraph(words, `  ${String(number).padStart(2)}. `),
    ...breaks.flatMap((line) => paragraph(line, '      ')),
    ...recipes.flatMap((line) => paragraph(line, '      ')),
    ...list('First', before),
    ...list('Beware', cautions),
    ...list(liftsTitle, lifts),
    ...list('Dials, from 0', dials),
    ...list('Then the couplings should show', readings),
    ...(stop === undefined ? [] : paragraph(`STOP POINT. ${stop}`, '      ')),
  ]
}
