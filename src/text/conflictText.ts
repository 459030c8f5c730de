import type { Conflict } from '../engine/infeasible/conflict/answer'
import { heading, paragraph } from './layout'

/** Why there is no plan: what cannot be had together, and what would be in the way next. */
export function conflictText([first, ...behind]: readonly Conflict[]): string[] {
  if (!first) return []
  return [
    ...heading('WHY NOT', 'these together are impossible; without any one of them they are not'),
    ...paragraph(first.sentence, '  '),
    ...first.members.flatMap(({ sentence }) => paragraph(sentence, '  - ')),
    ...behind.flatMap(({ sentence }) => paragraph(`Behind it: ${sentence}`, '  ', 4)),
  ]
}
