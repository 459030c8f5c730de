import { fineText, shareText } from '../language/amounts'
import { capital, inSentence } from '../language/names'
import type { Body } from '../mechanics/train'
import { fineSign } from '../mechanics/units'
import { couplingFacts } from '../scene/couplingFacts'
import { footFacts } from '../scene/footFacts'
import type { Drawn } from './job'
import type { Block, Chapter } from './page'
import { movedBodies } from '../engine/plan/moves'
import { carriedWords, heldWords } from './words'

/** What the crew leaves behind: every coupling in every state, what was closed, what must not be touched, who stands for it. */
export function asLeftPage(job: Drawn): Chapter[] {
  const { train, answer } = job
  if (answer.status !== 'planned') return []
  return [
    {
      section: 'left',
      title: 'As left',
      blocks: [
        ...couplingsLeft(job),
        ...shimMap(job),
        { kind: 'heading', text: 'Closed', aside: 'what was measured, and by whom' },
        closing,
        { kind: 'heading', text: 'Must not be touched' },
        { kind: 'list', look: 'dash', items: untouched(job, movedBodies(train, answer)) },
        {
          kind: 'blanks',
          columns: 2,
          labels: ['seen, and not in the plan', 'what is next'],
        },
        {
          kind: 'blanks',
          columns: 4,
          labels: ['Read by', 'Checked by', 'Accepted for operations'].flatMap((role) => [
            role,
            'name',
            'signature',
            'date',
          ]),
        },
      ],
    },
  ]
}

/** States beside each other in one table. */
const mostStates = 3

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
      aside: `share of the tolerance used; ${shareText(answer.share)} may be`,
    },
    ...parts.map((states, p) => ({
      kind: 'table' as const,
      columns: [
        { head: 'coupling, and its limits', width: 4 },
        ...states.flatMap(({ name }) => [
          { head: name, width: 1.4, align: 'right' as const, strong: true },
          { head: 'as left; pass or fail', width: 1.8 },
        ]),
      ],
      rows: facts.map(({ name, limits, rows }) => [
        `${name}: ${limits}`,
        ...states.flatMap((_, s) => [rows[p * mostStates + s]?.after?.percent ?? '-', '']),
      ]),
    })),
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
    {
      kind: 'beside',
      parts: halves(rows).map((some) => ({
        width: 6,
        blocks: [
          {
            kind: 'table',
            columns: [
              { head: 'foot', width: 2.6 },
              { head: 'planned', width: 1.6 },
              { head: 'plates as left', width: 3 },
            ],
            rows: some,
          },
        ],
      })),
    },
  ]
}

/** Two columns, the first as long as the second or by one longer. */
const halves = <Entry>(entries: readonly Entry[]): (readonly Entry[])[] =>
  entries.length < 2
    ? [entries]
    : [
        entries.slice(0, Math.ceil(entries.length / 2)),
        entries.slice(Math.ceil(entries.length / 2)),
      ]

/** Three things a line: what was done, and a box for its figure and who stands for it. */
const closing: Block = {
  kind: 'table',
  columns: [1, 2, 3].flatMap(() => [
    { head: 'what', width: 2.2 },
    { head: 'figure; by', width: 2.4 },
  ]),
  rows: [
    ['bolts, torque', 'wrench, number', 'soft foot, most'],
    ['pipe strain, most', 'run-out', 'gaps, end float'],
    ['dials, numbers', 'bracket, its sag', 'oil and air, \u00b0'],
    ['dowels', 'guards on', 'locks, tags off'],
  ].map((row) => row.flatMap((what) => [what, ''])),
}

/** Held machines, feet that may not move, and what was set before. */
function untouched({ train, answer }: Drawn, moved: readonly Body[]): string[] {
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
