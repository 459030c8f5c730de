import type { ReasonsAnswer } from '../engine/fieldwork/answer'
import type { HoldsTried, Remedy } from '../engine/infeasible/remedies/answer'
import { heading, paragraph } from './layout'

/** Remedies told of those that do not work by themselves. */
const mostOthers = 6

/**
 * What would make an impossible train possible, least effort first; then what was tried and is not
 * enough by itself. Before any of it the cheapest remedy of all, which no program can try.
 */
export function remediesText({ remedies, holdsTried, unfinished = [] }: ReasonsAnswer): string[] {
  const working = remedies.filter(({ solves }) => solves)
  const others = remedies.filter(({ solves }) => !solves)
  const rest = others.length - mostOthers
  return [
    ...heading('REMEDIES', 'each solved on a copy of the file; effort 1 is minutes, 10 is weeks'),
    ...paragraph(
      'First read again: signs, sag, which shaft the bracket sat on, where the feet stand, which side is which. Half an hour, and the best money spent.',
      '  ',
    ),
    ...(working.length === 0
      ? paragraph(unfinished.includes('remedies') ? noneSoFar : noneText(holdsTried), '  ')
      : []),
    ...working.flatMap((remedy, i) => ['', ...remedyText(remedy, i + 1)]),
    ...(others.length === 0 ? [] : ['', ...paragraph('Not enough by themselves:', '  ')]),
    ...others
      .slice(0, mostOthers)
      .flatMap(({ sentence }) =>
        paragraph(sentence.replace(' Not enough by itself: at best ', ' At best '), '  - '),
      ),
    ...(rest > 0 ? paragraph(`and ${rest} more`, '  - ') : []),
  ]
}

/** Where not all was tried. */
export const noneSoFar = 'Of what was tried so far nothing works.'

function noneText({ tried }: HoldsTried): string {
  const holds =
    tried > 0
      ? `none of ${tried} other choices of fixed machines`
      : 'no other choice of fixed machines'
  return `Nothing that was tried works, alone or in pairs; ${holds} does. What is left is larger: a soleplate moved and grouted again, another coupling, another base.`
}

function remedyText(remedy: Remedy, number: number): string[] {
  const { effort, hours, sentence, agree, risk, tight } = remedy
  const lead = `  ${number}. `
  const hang = lead.length
  const [low, high] = hours
  const crew = low === high ? `${low}` : `${low} to ${high}`
  const line = (text: string) => paragraph(text, ' '.repeat(hang))
  return [
    ...paragraph(sentence, lead),
    ...line(`Effort ${effort}; ${crew} crew hours (common practice, no source).`),
    ...line(`Must agree: ${agree}.`),
    ...line(`Risk: ${risk}.`),
    ...(tight.length > 0 ? line(`Still tight: ${tight.join('; ')}.`) : []),
  ]
}
