import { notEngaged } from '../language/engagedWords'
import { recordFactsOf, workRecordOf, type RecordFacts } from '../document/work'
import { factKeys, factWords } from '../document/words/factWords'
import { fineText, shareText } from '../language/amounts'
import { capital, inSentence } from '../language/names'
import type { Body } from '../mechanics/train'
import { fineSign } from '../mechanics/units'
import { couplingFacts } from '../scene/couplingFacts'
import { footFacts } from '../scene/footFacts'
import { fittedToWords } from './columnWidths'
import type { Drawn } from './job'
import type { Block, Chapter, Table } from './page'
import { movedBodies } from '../engine/plan/moves'
import { columnGap, textWidth } from './size'
import { carriedWords, heldWords } from './words'

/** What the crew leaves behind: every coupling in every state, what was closed, what must not be touched, who stands for it. */
export function asLeftPage(job: Drawn): Chapter[] {
  const { train, answer, document } = job
  if (answer.status !== 'planned') return []
  const facts = recordFactsOf(workRecordOf(document.record)?.facts) ?? {}
  return [
    {
      section: 'left',
      title: 'As left',
      blocks: [
        ...couplingsLeft(job),
        ...shimMap(job),
        {
          kind: 'heading',
          text: 'Closed',
          aside: 'figure, and by whom; as entered, or to be written in',
        },
        closing(facts),
        {
          kind: 'beside',
          parts: [
            {
              width: 8,
              blocks: [
                { kind: 'heading', text: 'Must not be touched' },
                { kind: 'list', look: 'dash', items: untouched(job, movedBodies(train, answer)) },
              ],
            },
            {
              width: 4,
              blocks: [
                {
                  kind: 'blanks',
                  columns: 1,
                  labels: ['seen, and not in the plan', 'what is next'],
                },
              ],
            },
          ],
        },
        {
          kind: 'blanks',
          columns: 4,
          labels: signs.flatMap((key) => {
            const name = said(facts, key)
            return [
              capital(factWords[key]),
              name === '' ? 'name' : `name: ${name}`,
              'signature',
              'date',
            ]
          }),
        },
      ],
    },
  ]
}

/** Who stands for it, with a line to sign on each. */
const signs = ['readBy', 'checkedBy', 'acceptedBy'] as const

const said = (facts: RecordFacts, key: keyof RecordFacts): string => facts[key]?.trim() ?? ''

/** States beside each other in one table. */
const mostStates = 4

/** The share of its tolerance that each coupling is planned to use in every state, and a box for what it uses. */
function couplingsLeft({ train, answer, figures }: Drawn): Block[] {
  const facts = couplingFacts(train, answer, figures)
  const parts = train.states.flatMap((_, i) =>
    i % mostStates === 0 ? [train.states.slice(i, i + mostStates)] : [],
  )
  return [
    {
      kind: 'heading',
      text: 'Couplings',
      aside: `tolerance used; ${shareText(answer.share)} may be. Readings: on the couplings' pages`,
    },
    ...parts.map((states, p) =>
      fittedToWords({
        kind: 'table',
        columns: [
          { head: 'coupling, and its limits', width: 4 },
          ...states.flatMap(({ name }) => [
            { head: name, width: 1.3, align: 'right' as const, strong: true },
            { head: 'left; pass?', width: 1.6 },
          ]),
        ],
        rows: facts.map(({ name, limits, rows, apart }) => [
          `${name}: ${limits}`,
          ...states.flatMap((_, k) => {
            const s = p * mostStates + k
            const open = apart.some(({ state }) => state === s)
            const row = rows.find(({ state }) => state === s)
            return [open ? notEngaged : (row?.after?.percent ?? '-'), '']
          }),
        ]),
      }),
    ),
  ]
}

/** Feet whose packs change: what is planned under each, and a box for the plates that lie there. */
function shimMap({ train, answer }: Drawn): Block[] {
  const rows = footFacts(train, answer)
    .filter(({ shim }) => shim?.amount)
    .map(({ body, name, shim, pack }) => [
      `${train.bodies[body]?.name ?? ''}, ${name}`,
      pack ? fineText(pack.after, train.units) : `${shim?.word} ${shim?.amount?.digits}`,
      '',
    ])
  if (rows.length === 0) return []
  return [
    {
      kind: 'heading',
      text: 'Shim map',
      aside: `plates as they lie, from the base up, in ${fineSign[train.units.fine]}`,
    },
    inTwo(
      [
        { head: 'foot', width: 2.6 },
        { head: 'planned', width: 1.6 },
        { head: 'plates as left', width: 3 },
      ],
      rows,
    ),
  ]
}

/** A table cut into two that stand beside each other. */
const inTwo = (columns: Table['columns'], rows: Table['rows']): Block => ({
  kind: 'beside',
  parts: halves(rows).map((some) => ({
    width: 6,
    blocks: [fittedToWords({ kind: 'table', columns, rows: some }, (textWidth - columnGap) / 2)],
  })),
})

/** Two columns, the first as long as the second or by one longer. */
const halves = <Entry>(entries: readonly Entry[]): (readonly Entry[])[] =>
  entries.length < 2
    ? [entries]
    : [
        entries.slice(0, Math.ceil(entries.length / 2)),
        entries.slice(Math.ceil(entries.length / 2)),
      ]

/** What was done or worked with, each in a box with its figure as entered, or with room for it. */
function closing(facts: RecordFacts): Block {
  const entered = factKeys
    .filter((key) => !signs.some((sign) => sign === key))
    .map((key) => ({ label: factWords[key], value: said(facts, key) }))
  const asked = [
    'soft foot, most',
    'pipe strain, most',
    'jackscrews backed off',
    'locks and tags off',
  ].map((label) => ({ label, value: '' }))
  return { kind: 'boxes', columns: 4, boxes: [...entered, ...asked] }
}

/** Held machines, feet that may not move, and what was set before. */
export function untouched({ train, answer }: Drawn, moved: readonly Body[]): string[] {
  const name = (body: Body) => capital(inSentence(body.name))
  const keyed = train.bodies.flatMap((body) =>
    body.held
      ? []
      : body.feet.flatMap(({ id, mayShim, maySlide }) => [
          ...(mayShim ? [] : [`Foot ${id} of ${inSentence(body.name)}: no shim may go in or out.`]),
          ...(maySlide ? [] : [`Foot ${id} of ${inSentence(body.name)}: it may not slide.`]),
        ]),
  )
  const still = train.bodies.filter((body) => !body.held && !moved.includes(body))
  return [
    ...train.bodies
      .filter(({ held }) => held)
      .map(
        (body) =>
          `${name(body)}: fixed${body.anchored === undefined ? '' : `, ${body.anchored}`}. ${heldWords(train, answer, body)}`,
      ),
    ...still.map((body) => {
      const carried = carriedWords(train, answer, body)
      return `${name(body)}: ${carried === undefined ? 'stays where it is' : `makes no move of its own; ${carried}`}.`
    }),
    ...keyed,
    'Brackets and dials that are set, until they have been read.',
    'Locks, tags and blinds.',
  ]
}
