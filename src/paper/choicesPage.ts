import { madeOf } from '../engine/rounding/answer'
import { costWord } from '../language/costWord'
import { choicesOpen } from '../text/unfinishedWords'
import type { HoldItem } from '../text/holdList'
import { orderInWords } from '../text/holdsText'
import { capital, counted } from '../language/names'
import type { Train } from '../mechanics/train'
import type { Drawn } from './job'
import type { Block, Chapter } from './page'
import { sentence } from './words'

/** Most choices that a list by itself names. */
const mostTold = 8

/** What else could have been held, and what that would have cost. */
export function choicesPage({ train, holds: list, plan }: Drawn): Chapter[] {
  if (!list) return [notCompared(train)]
  const made = plan.status === 'planned' && madeOf(plan.rounded)
  const rounded = made ? ' All before rounding to the shims of the store.' : ''
  return [
    {
      section: 'choices',
      title: 'What else could be fixed',
      blocks: [
        {
          kind: 'text',
          look: 'plain',
          text: `${list.complete ? `All ${counted(list.solved, 'choice', 'choices')} were solved` : `The best ${list.solved} choices found; the list is not complete`}; ${orderInWords}.${list.ranOut ? ` ${choicesOpen}` : ''}${rounded}`,
        },
        table(list.shown, `${costWord(train)}, ${list.unit}`, list.unit),
        ...(list.fewer === '' ? [] : [{ kind: 'text', look: 'plain', text: list.fewer } as const]),
        ...folded(
          'Beaten',
          'no better on any count than a choice above',
          list.beaten,
          ` ${list.unit}`,
        ),
        ...folded(
          'Impossible',
          list.implied > 0
            ? `and ${counted(list.implied, 'choice that fixes', 'choices that fix')} more than one of these`
            : 'with what is asked for',
          list.impossible,
        ),
      ],
    },
  ]
}

/** A train with more choices than paper waits for: that they were not looked at, and where they are. */
function notCompared(train: Train): Chapter {
  const open = train.bodies.filter(({ anchored }) => anchored === undefined).length
  return {
    section: 'choices',
    title: 'What else could be fixed',
    blocks: [
      {
        kind: 'text',
        look: 'strong',
        text: `NOT COMPARED: ${open} machines may each be fixed or released, and no other choice than the one on page 1 was planned for this sheet.`,
      },
      {
        kind: 'text',
        look: 'plain',
        text: 'Whether another choice needs less is not said here. The list on the screen and the command "holdfast holds" compare choices.',
      },
    ],
  }
}

const table = (items: readonly HoldItem[], moves: string, unit: string): Block => ({
  kind: 'table',
  columns: [
    { head: '', width: 0.6, align: 'right' },
    { head: 'choice', width: 3.6 },
    { head: moves, width: 1.6, align: 'right', strong: true },
    { head: `effort, ${unit}`, width: 1.6, align: 'right' },
    { head: 'what it does, and why it is not the first', width: 6 },
  ],
  rows: items.map((item, i) => [
    String(i + 1),
    `${item.title}${item.current ? ' (NOW)' : ''}`,
    item.moves ?? item.verdict ?? '-',
    item.effort ?? '-',
    [
      capital(item.detail),
      item.chance === undefined ? '' : `${item.chance} that every state is in`,
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

function folded(text: string, aside: string, items: readonly HoldItem[], unit = ''): Block[] {
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
              `${title}${moves === undefined ? '' : `, ${moves}${unit}`}${why === '' ? '' : `: ${why}`}`,
            ),
          ),
        ...(rest > 0 ? [`And ${rest} more.`] : []),
      ],
    },
  ]
}
