import type { ReadyAnswer, ReadyItem } from '../engine/fieldwork/ready/answer'
import { heading, paragraph } from './layout'
import { capital } from '../language/names'

/** Whether the plan may be carried out: one sentence, and that its figures are provisional where they are. */
export const readyLine = ({ sentence, provisionalSentence }: ReadyAnswer): string[] => [
  '',
  ...paragraph([sentence, provisionalSentence].filter((part) => part !== '').join(' ')),
]

/** What is in the way of the work, what was waived, and the soft-foot step with its stop point. */
export function readyText(ready: ReadyAnswer): string[] {
  const open = ready.items.filter(({ state }) => state !== 'in')
  if (open.length === 0) return []
  return [
    ...heading(
      'BEFORE MOVING',
      'what must be in, or accepted without it by name and with a reason',
    ),
    ...open.flatMap((item) => paragraph(itemText(item), '  - ')),
    ...ready.softFoot.flatMap(({ feet, words, moves, hold, limit }) => [
      ...feet
        .filter(({ rise, kinds }) => rise > limit || kinds.length > 0)
        .flatMap((foot) => paragraph(`${foot.words}.`, '    ')),
      ...words.flatMap((line) => paragraph(line, '    ')),
      ...moves.flatMap((move) => paragraph(`That moves ${move.words}.`, '    ')),
      ...paragraph(hold, '    '),
    ]),
  ]
}

const itemText = ({ words, state, by = '', why = '' }: ReadyItem): string =>
  state === 'waived' ? `${capital(words)}; accepted without, by ${by}: ${why}` : capital(words)
