import { notEngaged } from '../language/engagedWords'
import { shareText } from '../language/amounts'
import { coupledSaid } from '../engine/plan/coupledWords'
import type { Train } from '../mechanics/train'
import { couplingFacts } from '../scene/couplingFacts'
import { axialBlocks } from './axialBlocks'
import { historyBlocks } from './historyBlocks'
import { hotCheckBlocks } from './hotCheckBlocks'
import { shareCharts } from './shareChart'
import { sentence } from './words'
import type { Drawn } from './job'
import type { Block, Chapter } from './page'

/** What has to be met, on whose word, and how far the train is from it. */
export function demandsPage(job: Drawn): Chapter {
  const { train, answer, figures } = job
  const facts = couplingFacts(train, answer, figures)
  const moves = answer.status === 'planned'
  return {
    section: 'demands',
    title: 'Tolerances and states',
    blocks: [
      { kind: 'heading', text: 'Tolerances', aside: 'of the shafts of each coupling' },
      {
        kind: 'table',
        columns: [
          { head: 'coupling', width: 3 },
          { head: 'limit', width: 4 },
          { head: 'basis', width: 4 },
        ],
        rows: facts.map(({ name, limits, basis }) => [name, limits, basis ?? 'not entered']),
      },
      { kind: 'heading', text: 'States', aside: 'all of them are met at once' },
      {
        kind: 'table',
        columns: [
          { head: 'state', width: 3 },
          { head: 'every tolerance times', width: 2 },
          { head: 'the plan may use', width: 2 },
        ],
        rows: train.states.map(({ name, factor }) => [
          name,
          String(factor),
          `${shareText(answer.share)} of that`,
        ]),
      },
      {
        kind: 'heading',
        text: moves ? 'Use of the tolerances' : 'Use of the tolerances as found',
        aside: `${moves ? 'bar planned, circle as found' : 'bar as found'}, long line ${shareText(answer.share)}; over 100 % is beyond the limit`,
      },
      ...shareCharts(facts, answer.share),
      ...sharesTable(facts, moves),
      ...coupledBlocks(train),
      ...historyBlocks(train),
      ...hotCheckBlocks(job),
      ...teethBlocks(facts),
      ...axialBlocks(job),
      ...margin(job),
    ],
  }
}

function sharesTable(facts: ReturnType<typeof couplingFacts>, moves: boolean): Block[] {
  const use = (percent: string, over: boolean) => (over ? `${percent} OVER` : percent)
  return [
    {
      kind: 'table',
      columns: [
        { head: 'coupling', width: 3 },
        { head: 'state', width: 2.4 },
        { head: 'as found', width: 1.6, align: 'right' },
        ...(moves ? [{ head: 'planned', width: 1.6, align: 'right', strong: true } as const] : []),
        { head: moves ? 'the tightest check as planned' : 'the tightest check', width: 5 },
      ],
      rows: facts.flatMap(({ name, rows, apart }) => [
        ...rows.map((row) => {
          const tight = moves ? (row.after ?? row.asFound) : row.asFound
          return [
            name,
            row.name,
            use(row.asFound.percent, row.asFound.over),
            ...(moves ? [row.after ? use(row.after.percent, row.after.over) : 'not known'] : []),
            [tight.value, tight.which, tight.shown].filter((part) => part !== '').join(', '),
          ]
        }),
        ...apart.map((state) => [name, state.name, notEngaged, ...(moves ? [notEngaged] : []), '']),
      ]),
    },
  ]
}

/** What is wanted of couplings and why, and how far their halves run out. */
function coupledBlocks(train: Train): Block[] {
  const said = train.couplings.flatMap((coupling) => coupledSaid(train, coupling))
  if (said.length === 0) return []
  return [
    { kind: 'heading', text: 'Wanted, and run-out', aside: 'right machine against left' },
    ...said.map((words): Block => ({ kind: 'text', look: 'plain', text: sentence(words) })),
  ]
}

/** What the teeth of gear couplings need, and how they run. */
function teethBlocks(facts: ReturnType<typeof couplingFacts>): Block[] {
  const own = facts.flatMap(({ name, teeth }) => (teeth ? [{ name, ...teeth }] : []))
  if (own.length === 0) return []
  return [
    { kind: 'heading', text: 'Gear couplings', aside: 'angle at the teeth as they run' },
    ...own.flatMap(({ name, asked, meshes }): Block[] => [
      { kind: 'text', look: 'strong', text: asked === '' ? name : sentence(`${name}: ${asked}`) },
      ...meshes.map(({ words, off }): Block => ({
        kind: 'text',
        look: off ? 'strong' : 'plain',
        text: sentence(words),
      })),
    ]),
  ]
}

/** Where nothing moves: how much room is left, and against what it has to be weighed. */
function margin({ answer }: Drawn): Block[] {
  if (answer.status !== 'in-tolerance') return []
  const left = answer.share - answer.standingShare
  return [
    { kind: 'heading', text: 'Margin' },
    {
      kind: 'text',
      look: 'strong',
      text: sentence(
        `As found the tightest coupling uses ${shareText(answer.standingShare)} of its tolerance; ${shareText(answer.share)} was asked for, so ${shareText(left)} of the tolerance is left before anything has to move`,
      ),
    },
    {
      kind: 'text',
      look: 'plain',
      text: 'Weigh it against how well the readings and the growth are known: where that is larger than the margin, read again before this is signed.',
    },
    {
      kind: 'blanks',
      columns: 3,
      labels: ['nothing is moved: agreed by', 'signature', 'date and time'],
    },
  ]
}
