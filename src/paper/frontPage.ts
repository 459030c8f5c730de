import type { PlanAnswer } from '../engine/fieldwork/answer'
import type { HoldList } from '../text/holdList'
import { afterWork } from '../engine/fieldwork/loop/afterWork'
import { hasMoves } from '../engine/plan/moves'
import { keptOff } from '../engine/plan/sentence'
import type { Train } from '../mechanics/train'
import { workedSentence } from '../engine/fieldwork/displayed'
import { caution } from '../text/remarksText'
import { capital, counted, inSentence, listed } from '../language/names'
import { blockHeight } from './blockHeight'
import { codeBlock } from './codeBlock'
import { footTableBlocks } from './footTable'
import type { Drawn } from './job'
import type { Block, Chapter, PrintFor } from './page'
import { readyBox } from './readyPage'
import { sureLine } from './sureBlocks'
import { trainFigure } from './trainFigure'
import { sidesInWords } from '../language/sides'
import { carriedWords, jobTitle, sentence, signInWords } from './words'

/**
 * The first page: what is asked of whom, on which train, and who stands for it. The crew's has every foot, the office's
 * what is proven and why this is held.
 */
export function frontPage(job: Drawn, print: PrintFor): Chapter {
  const { train, answer, plan, document } = job
  const { headline, moves, proof } = workedSentence(train, plan)
  const still = answer.status === 'in-tolerance' && keptOff(answer)
  return {
    section: 'front',
    title: still ? 'Nothing needs to move' : `${jobTitle(document)}: work sheet`,
    whole: true,
    blocks: [
      ...(still ? [{ kind: 'text', look: 'lead', text: jobTitle(document) } as const] : []),
      { kind: 'figures', figures: [trainFigure(train)] },
      ...judged(job),
      { kind: 'text', look: 'lead', text: headline },
      { kind: 'text', look: 'strong', text: moves },
      ...slips(train),
      ...(print === 'office' ? sure(proof, plan) : []),
      ...inTheWay(plan, print),
      ...readyBeside(job, [
        {
          kind: 'text',
          look: 'plain',
          text: `${sidesInWords(train, 'drawing')} ${signInWords} ${caution}`,
        },
        ...sureLine(train, plan),
      ]),
      ...(print === 'crew'
        ? [...staysBesideCode(job), ...footTableBlocks(job)]
        : [...orderWords(job), ...stays(job, print)]),
      {
        kind: 'blanks',
        columns: 3,
        labels: [
          ...signatures(answer.status).map((role) => `${role}: name`),
          ...signatures(answer.status).map(() => 'signature, date'),
        ],
      },
    ],
  }
}

/** Whether work may begin, framed, with what holds of the whole sheet beside it. */
function readyBeside({ answer }: Drawn, rest: readonly Block[]): Block[] {
  const box = answer.ready && answer.status !== 'impossible' ? readyBox(answer, answer.ready) : []
  if (box.length === 0) return [...rest]
  const ways = boxWidths.map((width): Block => ({
    kind: 'beside',
    parts: [
      { width: 12 - width, blocks: rest },
      { width, blocks: box },
    ],
  }))
  const least = Math.min(...ways.map((way) => blockHeight(way)))
  return ways.filter((way) => blockHeight(way) === least).slice(0, 1)
}

/** Parts of twelve of the page's width that the verdict may take: a long one takes more. */
const boxWidths = [5, 6, 7]

/** Values that look like slips, and of which nobody has said that they are right. */
const slips = ({ asked }: Train): Block[] =>
  asked.length === 0
    ? []
    : [
        {
          kind: 'box',
          title: 'LOOK AGAIN BEFORE FOLLOWING THIS',
          items: asked.map(({ words }) => sentence(words)),
        },
      ]

/** After work: how the train was found to stand, before what the plan would still ask for. */
function judged({ document, train, plan }: Drawn): Block[] {
  const after = afterWork(document, train, plan)
  if (!after) return []
  switch (after.state) {
    case 'done':
      return [{ kind: 'box', title: 'NOTHING MORE TO DO', items: [after.words] }]
    case 'not worth it':
      return [
        { kind: 'box', title: 'LESS LEFT THAN ITS ERRORS', items: [after.words] },
        {
          kind: 'text',
          look: 'plain',
          text: 'What it would still take to use no more than was asked for:',
        },
      ]
    case 'open':
      return [{ kind: 'text', look: 'strong', text: after.words }]
  }
}

/** What is proven, and what the store's shims make of it. */
function sure(proof: string, plan: PlanAnswer): Block[] {
  const rounded = plan.status === 'planned' ? plan.rounded : undefined
  const more = rounded && !proof.includes(rounded.sentence) ? rounded.sentence : ''
  const text = [proof, more].filter((part) => part !== '').join(' ')
  return text === '' ? [] : [{ kind: 'text', look: 'plain', text }]
}

/** Of an impossible train: what cannot be had together, and where the ways out stand. */
function inTheWay(plan: PlanAnswer, print: PrintFor): Block[] {
  const reasons = plan.status === 'impossible' ? plan.reasons : undefined
  const [conflict] = reasons?.conflicts ?? []
  if (!reasons || !conflict) return []
  const where = print === 'crew' ? "in the office's print" : 'on the next page'
  const ways = reasons.remedies.filter(({ solves }) => solves).length
  return [
    {
      kind: 'box',
      title: 'NO PLAN: nothing may be moved by this sheet',
      items: [
        conflict.sentence,
        ways === 0
          ? `Nothing that was tried works${reasons.unfinished ? ' so far' : ''}; what was tried stands ${where}.`
          : `What would work stands ${where}, ${counted(ways, 'way', 'ways')} by effort.`,
      ],
    },
  ]
}

/** What the order of the steps rests on, and an order that was asked for and is none. */
function orderWords({ answer }: Drawn): Block[] {
  const steps = hasMoves(answer) ? answer.steps : undefined
  if (!steps || steps.steps.length === 0) return []
  return [
    { kind: 'text', look: 'plain', text: steps.words },
    ...(steps.unknown.length === 0
      ? []
      : [
          {
            kind: 'text',
            look: 'strong',
            text: `The order asked for names what is no step of this plan: ${steps.unknown.join(', ')}.`,
          } as const,
        ]),
  ]
}

function signatures(status: PlanAnswer['status']): string[] {
  const last: Partial<Record<PlanAnswer['status'], string>> = {
    'in-tolerance': 'Agreed: nothing is moved',
    impossible: 'Decided',
  }
  return ['Prepared', 'Signs read back by another', last[status] ?? 'Released for work']
}

/**
 * The lines about what is fixed are shorter than the page: the code stands in what they leave, before the table of feet,
 * which may go on over the page.
 */
const staysBesideCode = (job: Drawn): Block[] => [
  {
    kind: 'beside',
    parts: [
      { width: 9, blocks: stays(job, 'crew', 'at the right: what opens this sheet on a shelf') },
      { width: 3, blocks: [codeBlock(job)] },
    ],
  },
]

/** What does not move, and why. */
function stays({ train, answer, holds }: Drawn, print: PrintFor, aside?: string): Block[] {
  const held = train.bodies.filter(({ held }) => held)
  const chosen = held
    .filter(({ anchored }) => anchored === undefined)
    .map(({ name }) => inSentence(name))
  return [
    { kind: 'heading', text: 'What is fixed, and why', ...(aside !== undefined && { aside }) },
    {
      kind: 'list',
      look: 'dash',
      items: [
        ...(held.length === 0 ? ['Nothing is fixed: every machine may move.'] : []),
        ...(chosen.length === 0 ? [] : [`${capital(listed(chosen))}: by choice.`]),
        ...held.flatMap(({ name, anchored }) =>
          anchored === undefined
            ? []
            : [`${capital(inSentence(name))}: may never be released: ${sentence(anchored)}`],
        ),
        ...train.bodies.flatMap((body) => {
          const carried = carriedWords(train, answer, body)
          return carried === undefined ? [] : [`${capital(inSentence(body.name))} ${carried}.`]
        }),
        ...(holds && print === 'office' ? whyHeld(holds, answer.status === 'planned') : []),
        ...(holds || print === 'crew' || answer.status !== 'planned'
          ? []
          : ['Other choices of fixed machines were not compared on this sheet.']),
      ],
    },
  ]
}

/** How this choice stands among all that were solved, as the page that compares them has it. */
function whyHeld({ shown, solved }: HoldList, planned: boolean): string[] {
  if (!planned) return [`${counted(solved, 'choice', 'choices')} of fixed machines were solved.`]
  const place = shown.findIndex(({ current }) => current)
  const item = shown[place]
  if (!item) return []
  const of = `Of ${counted(solved, 'choice', 'choices')} of fixed machines`
  if (place === 0) return [`${of} none needs less, moves and effort together.`]
  const why = item.why === '' ? '' : ` ${sentence(capital(item.why))}`
  return [`${of} it is number ${place + 1} by moves and effort.${why}`]
}
