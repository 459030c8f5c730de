import type { PlanAnswer } from '../engine/fieldwork/answer'
import { heading, paragraph } from './layout'

/** Why there is no plan: what cannot be had together, and what would be in the way next. */
export function conflictText({ conflict, conflictSentence, behind }: PlanAnswer): string[] {
  if (!conflict || conflictSentence === undefined) return []
  return [
    ...heading('WHY NOT', 'these together are impossible; without any one of them they are not'),
    ...paragraph(conflictSentence, '  '),
    ...conflict.flatMap(({ sentence }) => paragraph(sentence, '  - ')),
    ...(behind ?? []).flatMap(({ sentence }) => paragraph(`Behind it: ${sentence}`, '  ', 4)),
  ]
}
