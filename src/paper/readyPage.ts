import type {
  ReadyAnswer,
  ReadyItem,
  ReadyState,
  SoftFootAnswer,
} from '../engine/fieldwork/ready/answer'
import { basesSaid } from '../engine/fieldwork/ready/base'
import type { PlanAnswer } from '../engine/fieldwork/answer'
import { checkedOf } from '../engine/fieldwork/ready/checked'
import { readyName } from '../engine/fieldwork/ready/readySentence'
import { unexpectedRuns } from '../engine/fieldwork/ready/unexpectedRuns'
import { fineSign } from '../mechanics/units'
import { capital, inSentence, listed } from '../language/names'
import type { Train } from '../mechanics/train'
import { airGapSheet, statorBlocks } from './statorBlocks'
import { fittedToWords } from './columnWidths'
import type { Drawn } from './job'
import type { Block, Chapter } from './page'
import { sentence } from './words'
import { withoutLead } from '../engine/fieldwork/steps/instructions'

const states: Record<ReadyState, string> = {
  in: 'in',
  waived: 'accepted without',
  missing: 'MISSING',
  bad: 'NOT GOOD',
}

/** For the crew: what is not in before anything is moved, soft feet, and sheets to fill in. */
export function checksPage({ train, answer }: Drawn): Chapter[] {
  const { ready } = answer
  if (!ready) return []
  const { items } = ready
  const good = items.filter(({ state }) => state === 'in')
  const signs = items.filter(({ what, state }) => what === 'signs' && state !== 'in')
  // what is to be measured has a sheet of its own below
  const rest = items.filter(
    (item) =>
      item.state !== 'in' && !signs.includes(item) && !(sheeted(item) && item.state === 'missing'),
  )
  return [
    {
      section: 'checks',
      title: moves(answer) ? 'Before anything is moved' : 'What is in, and what is not',
      blocks: [
        ...(good.length === 0
          ? []
          : [
              {
                kind: 'text',
                look: 'plain',
                text: `In: ${listed(good.map((item) => `${readyName(item.what)} of ${inSentence(placeOf(train, item))}`))}.`,
              } as const,
            ]),
        ...(rest.length === 0 ? [] : [readyTable(train, rest)]),
        ...(signs.length === 0 ? [] : signsSheet(train, signs)),
        ...ready.softFoot.flatMap((soft) => softBlocks(train, soft)),
        ...baseBlocks(train, ready),
        ...airGapSheet(train, answer),
        ...softSheet(train, ready),
        ...strainSheet(train, ready),
      ],
    },
  ]
}

/** How the bases lie that are not told with soft feet. */
function baseBlocks(train: Train, { softFoot }: Pick<ReadyAnswer, 'softFoot'>): Block[] {
  const said = basesSaid(train, softFoot)
  if (said.length === 0) return []
  return [
    { kind: 'heading', text: 'Base', aside: 'soleplates against a level line' },
    ...said.map((text): Block => ({ kind: 'text', look: 'plain', text })),
  ]
}

/** For the office: all that has to be in, what stands for it, and who waived what. */
export function readyPage({ train, answer }: Drawn): Chapter[] {
  const { ready } = answer
  if (!ready) return []
  return [
    {
      section: 'ready',
      title: 'What is in, and what is not',
      blocks: [
        ...readyBox(answer, ready),
        readyTable(train, ready.items),
        ...baseBlocks(train, { softFoot: [] }),
        ...statorBlocks(train, answer),
      ],
    },
  ]
}

const readyTable = (train: Train, items: readonly ReadyItem[]): Block =>
  fittedToWords({
    kind: 'table',
    columns: [
      { head: 'what', width: 1.5 },
      { head: 'of', width: 2.2 },
      { head: 'stands', width: 1.9, strong: true },
      { head: 'as entered', width: 6 },
      { head: 'accepted without, by', width: 2 },
    ],
    rows: items.map((item) => [
      readyName(item.what),
      placeOf(train, item),
      states[item.state],
      sentence(capital(item.words)),
      item.state === 'waived'
        ? `${item.by ?? ''}: ${item.why ?? ''}`
        : item.state === 'in'
          ? ' '
          : '',
    ]),
  })

/** A train in tolerance is not worked on: it is agreed to, and that too is only as sure as what is in. */
const moves = ({ status }: PlanAnswer): boolean => status !== 'in-tolerance'

/** The verdict, framed: on the first page and on the one that has it in full. */
export function readyBox(
  answer: PlanAnswer,
  { ready, items, sentence: says, ...more }: ReadyAnswer,
): Block[] {
  const { provisionalSentence } = more
  const shown = unexpectedRuns(items).map((run) => sentence(capital(run.words)))
  const words = capital(says.replace(/^(not ready|ready): /i, ''))
  if (!moves(answer))
    return [
      {
        kind: 'box',
        title: ready ? 'ALL IN' : 'NOT ALL IN',
        items: ready
          ? [words]
          : [
              ...shown,
              words,
              'That nothing needs to move is only as sure as what is missing here.',
            ],
      },
    ]
  return [
    {
      kind: 'box',
      title: ready ? 'READY' : 'NOT READY',
      items: [...shown, words, ...(provisionalSentence === '' ? [] : [provisionalSentence])],
    },
  ]
}

/** What stands at the head of every page of a sheet that is not to be worked by as it is. */
export function noticeOf(ready: ReadyAnswer | undefined): string {
  if (!ready) return ''
  const parts = [
    ...(ready.ready ? [] : ['NOT READY']),
    ...(ready.provisional ? ['PROVISIONAL'] : []),
  ]
  return parts.length === 0 ? '' : `${parts.join(', ')}: see page 1`
}

const placeOf = (train: Train, item: ReadyItem): string =>
  checkedOf(train, item)?.name ?? item.where

function softBlocks(train: Train, soft: SoftFootAnswer): Block[] {
  const name = train.bodies.find(({ id }) => id === soft.body)?.name ?? soft.body
  return [
    {
      kind: 'heading',
      text: `Soft feet of ${inSentence(name)}`,
      aside: 'a step of its own, first',
    },
    {
      kind: 'list',
      look: 'tick',
      items: [...soft.words, ...soft.moves.map(({ words }) => `That moves ${words}.`)].map((text) =>
        sentence(capital(text)),
      ),
    },
    { kind: 'box', title: 'Stop point', items: [sentence(withoutLead(soft.hold))] },
  ]
}

const sheeted = ({ what }: ReadyItem): boolean => what === 'soft foot' || what === 'pipe strain'

/** What the readings mean, to be read aloud beside the machine and agreed to. */
const signsSheet = (train: Train, items: readonly ReadyItem[]): Block[] => [
  { kind: 'heading', text: 'Signs', aside: 'read aloud beside the machine: does it look so?' },
  fittedToWords({
    kind: 'table',
    columns: [
      { head: 'coupling', width: 2.2 },
      { head: 'what the readings mean', width: 9 },
      { head: 'agreed by, time', width: 2.2 },
    ],
    rows: items.map((item) => [
      placeOf(train, item),
      sentence(capital(meaning(item.words))),
      item.state === 'waived' ? `accepted without, by ${item.by ?? ''}: ${item.why ?? ''}` : '',
    ]),
  }),
]

/** What the readings mean without whose they are and that nobody agreed to it: the table says both. */
const meaning = (words: string): string => words.replace(/^.*nobody has confirmed[^.]*\. /, '')

/** Feet whose gaps were not measured, with room to write them. */
function softSheet(train: Train, ready: ReadyAnswer): Block[] {
  const missing = ready.items.filter(
    ({ what, state }) => what === 'soft foot' && state === 'missing',
  )
  if (missing.length === 0) return []
  const unit = fineSign[train.units.fine]
  return [
    {
      kind: 'heading',
      text: 'Soft foot, to be measured',
      aside: 'one bolt loosened at a time, the others tight; gaps at its four corners',
    },
    fittedToWords({
      kind: 'table',
      tall: true,
      columns: [
        { head: 'machine', width: 2.2 },
        ...[1, 2].flatMap(() => [
          { head: 'foot', width: 1.9 },
          { head: `rises, ${unit}`, width: 1.2 },
          { head: `four gaps, ${unit}`, width: 2.7 },
        ]),
      ],
      rows: missing.flatMap(({ where }) => {
        const body = train.bodies.find(({ id }) => id === where)
        return twos(body?.feet ?? []).map(([a, b]) => [
          body?.name ?? '',
          ...[a?.id ?? '', '', ''],
          ...(b ? [b.id, '', ''] : [' ', ' ', ' ']),
        ])
      }),
    }),
    {
      kind: 'blanks',
      columns: 3,
      labels: ['measured by', 'date and time', 'or accepted without, by; why'],
    },
  ]
}

/** Two and two, as they stand side by side in a table. */
const twos = <Entry>(entries: readonly Entry[]): (readonly Entry[])[] =>
  entries.flatMap((_, i) => (i % 2 === 0 ? [entries.slice(i, i + 2)] : []))

function strainSheet(train: Train, ready: ReadyAnswer): Block[] {
  const missing = ready.items.filter(
    ({ what, state }) => what === 'pipe strain' && state === 'missing',
  )
  if (missing.length === 0) return []
  const unit = fineSign[train.units.fine]
  return [
    {
      kind: 'heading',
      text: 'Pipe strain, to be measured',
      aside: 'how far the shaft goes at the coupling as each flange is made up',
    },
    {
      kind: 'table',
      tall: true,
      columns: [
        { head: 'coupling', width: 2.6 },
        ...[1, 2].flatMap(() => [
          { head: 'flange', width: 2 },
          { head: `up or down, ${unit}`, width: 1.7 },
          { head: `to which side, ${unit}`, width: 1.7 },
        ]),
        { head: 'by, time', width: 1.6 },
      ],
      rows: missing.map((item) => [placeOf(train, item), '', '', '', '', '', '', '']),
    },
  ]
}
