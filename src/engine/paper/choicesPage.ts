import { costWord } from '../sheet/bindingWords'
import { holdList, type HoldItem } from '../sheet/holdList'
import { orderInWords } from '../sheet/holdsText'
import { capital, counted } from '../sheet/words'
import type { Drawn } from './job'
import type { Block, Chapter } from './page'
import { sentence } from './words'

/** Most choices that a list by itself names. */
const mostTold = 8

/** What else could have been held, and what that would have cost. */
export function choicesPage({ train, holds }: Drawn): Chapter[] {
  if (!holds) return []
  const list = holdList(train, holds.rows, holds.complete)
  return [
    {
      section: 'choices',
      title: 'What else could be held',
      blocks: [
        {
          kind: 'text',
          look: 'plain',
          text: `${holds.complete ? `All ${counted(list.solved, 'choice', 'choices')} were solved` : `The best ${list.solved} choices found; the list is not complete`}; ${orderInWords}.`,
        },
        table(list.shown, `${costWord(train)}, ${list.unit}`, list.unit),
        ...folded('Beaten', 'no better on any count than a choice above', list.beaten),
        ...folded(
          'Impossible',
          list.implied > 0
            ? `and ${counted(list.implied, 'choice that holds', 'choices that hold')} more than one of these`
            : 'with what is asked for',
          list.impossible,
        ),
      ],
    },
  ]
}

const table = (items: readonly HoldItem[], moves: string, unit: string): Block => ({
  kind: 'table',
  columns: [
    { head: '', width: 0.6, align: 'right' },
    { head: 'choice', width: 3.6 },
    { head: moves, width: 1.6, align: 'right', strong: true },
    { head: `with effort, ${unit}`, width: 1.6, align: 'right' },
    { head: 'what it does, and why it is not the first', width: 6 },
  ],
  rows: items.map((item, i) => [
    String(i + 1),
    `${item.title}${item.current ? ' (NOW)' : ''}`,
    item.moves ?? item.verdict ?? '-',
    item.effort ?? '-',
    [
      capital(item.detail),
      capital(item.why),
      item.same.length > 0
        ? `The same plan as ${counted(item.same.length, 'other choice', 'other choices')}`
        : '',
    ]
      .filter((part) => part !== '')
      .map(sentence)
      .join(' '),
  ]),
})

function folded(text: string, aside: string, items: readonly HoldItem[]): Block[] {
  if (items.length === 0) return []
  const rest = items.length - mostTold
  return [
    { kind: 'heading', text, aside },
    {
      kind: 'list',
      look: 'dash',
      items: [
        ...items
          .slice(0, mostTold)
          .map(({ title, moves, why }) =>
            sentence(
              `${title}${moves === undefined ? '' : `, ${moves}`}${why === '' ? '' : `: ${why}`}`,
            ),
          ),
        ...(rest > 0 ? [`And ${rest} more.`] : []),
      ],
    },
  ]
}
