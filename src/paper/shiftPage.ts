import type { WorkDone } from '../document/work'
import type { WorkCard } from '../engine/fieldwork/steps/cards'
import { footMoves } from '../engine/fieldwork/loop/actual'
import { workStateWords, type WorkItem } from '../engine/fieldwork/workList'
import { workSoFar, type StepSoFar } from '../engine/fieldwork/loop/workSoFar'
import { movedBodies } from '../engine/plan/moves'
import { unexpectedRuns } from '../engine/fieldwork/ready/unexpectedRuns'
import { sentenceOf } from '../engine/plan/sentence'
import { signedText } from '../language/amounts'
import { capital, counted, inSentence, listed } from '../language/names'
import { whenText } from '../language/whenText'
import type { Train } from '../mechanics/train'
import { caution } from '../text/remarksText'
import { untouched } from './asLeftPage'
import { codeBlock } from './codeBlock'
import type { Drawn } from './job'
import type { Block, Chapter } from './page'
import { sidesInWords } from '../language/sides'
import { jobTitle, sentence, signInWords } from './words'

/** What one shift leaves to the next: what is done, what is begun, what comes next, what must not be touched. */
export function shiftPage(job: Drawn): Chapter {
  const { document, train, answer, instructions } = job
  const { headline } = sentenceOf(train, answer)
  const { list, steps } = workSoFar(document, train, answer.ready?.items ?? [], instructions)
  const signs = `${sidesInWords(train, 'drawing')} ${signInWords} ${caution}`
  return {
    section: 'shift',
    title: 'Where the work stands',
    blocks: [
      { kind: 'text', look: 'lead', text: jobTitle(document) },
      { kind: 'text', look: 'strong', text: headline },
      {
        kind: 'beside',
        parts: [
          { width: 9, blocks: [{ kind: 'text', look: 'plain', text: `${signs} ${opensBy}` }] },
          { width: 3, blocks: [codeBlock(job)] },
        ],
      },
      ...begunBox(train, steps),
      {
        kind: 'beside',
        parts: [
          { width: 6, blocks: nextBox(list, steps) },
          {
            width: 6,
            blocks: [
              {
                kind: 'box',
                title: 'MUST NOT BE TOUCHED',
                items: [...finished(steps), ...untouchedNow(job)],
              },
            ],
          },
        ],
      },
      ...(answer.ready && answer.status !== 'impossible'
        ? [
            ...unexpectedRuns(answer.ready.items).map(({ words }): Block => ({
              kind: 'text',
              look: 'strong',
              text: sentence(capital(words)),
            })),
            { kind: 'text', look: 'plain', text: answer.ready.sentence } as const,
          ]
        : []),
      ...wholeJob(list, steps),
      { kind: 'heading', text: 'What this sheet does not know', aside: 'to be written in' },
      { kind: 'blanks', columns: 3, labels: unknown },
      {
        kind: 'blanks',
        columns: 4,
        labels: ['handed over by', 'signature', 'taken over by, signature', 'time'],
      },
    ],
  }
}

/** How the sheet behind this page is come by. */
const opensBy = 'The code opens this on a shelf.'

/** Steps of which some is done and some is not: what a new shift can hurt itself on first. */
function begunBox(train: Train, steps: readonly StepSoFar[]): Block[] {
  const begun = steps.filter(({ isDone, ticked }) => !isDone && ticked.length > 0)
  if (begun.length === 0) return []
  return [
    {
      kind: 'box',
      title: 'BEGUN AND NOT FINISHED',
      items: [
        ...begun.map(({ instruction: { number, words }, ticked, open }) =>
          [
            `Step ${number}. ${sentence(words)}`,
            `Done: ${listed(ticked.map(({ card, entry }) => `${placeOf(card)}${measured(train, entry)}`))}.`,
            `Not done: ${listed(open.map(placeOf))}.`,
          ].join(' '),
        ),
        'See what the machine stands on and which of its bolts are loose before a hand goes near it: the sheet does not know.',
      ],
    },
  ]
}

const placeOf = (card: WorkCard): string =>
  card.kind === 'read' ? 'its stop point' : `foot ${listed(card.feet)}`

/** What was written down of a foot: "(+0.35 mm up, by A. Berg)"; + is up, toward 3 o'clock, to the right. */
function measured(train: Train, entry: WorkDone): string {
  const { body: id, foot, by, shim, side, axial } = entry
  const body = train.bodies.find((one) => one.id === id)
  const move =
    body && foot !== undefined
      ? footMoves(train, body, [{ body: id, foot, ...given({ shim, side, axial }) }])[
          body.feet.findIndex((one) => one.id === foot)
        ]
      : undefined
  const told = [
    ...(move && shim !== undefined ? [`shims ${signedText(move.shim, train.units)}`] : []),
    ...(move && side !== undefined ? [`slide ${signedText(move.side, train.units)}`] : []),
    ...(move && axial !== undefined ? [`along ${signedText(move.axial, train.units)}`] : []),
    ...(by === undefined || by === '' ? [] : [`by ${by}`]),
  ]
  return told.length === 0 ? '' : ` (${told.join(', ')})`
}

/** What was measured, without what was not. */
const given = (moves: Pick<WorkDone, 'shim' | 'side' | 'axial'>) => ({
  ...(moves.shim !== undefined && { shim: moves.shim }),
  ...(moves.side !== undefined && { side: moves.side }),
  ...(moves.axial !== undefined && { axial: moves.axial }),
})

/** The one thing that comes next; of a step with what is opened, lifted and watched first. */
function nextBox(list: readonly WorkItem[], steps: readonly StepSoFar[]): Block[] {
  const next = list.find(({ state }) => state === 'next')
  if (!next) return []
  const step = steps.find(({ instruction }) => instruction.id === next.step)?.instruction
  return [
    {
      kind: 'box',
      title: 'NEXT',
      items: step
        ? [
            `Step ${step.number}. ${sentence(step.words)}`,
            ...step.before,
            ...step.cautions,
            ...step.breaks,
          ]
        : [sentence(next.words)],
    },
  ]
}

/** The whole job as one list, as the sheet has it, with who did what and when; its halves beside each other. */
function wholeJob(list: readonly WorkItem[], steps: readonly StepSoFar[]): Block[] {
  const done = list.filter(({ state }) => state === 'done').length
  const items = list.map(({ state, words, step }) => {
    const of = steps.find(({ instruction }) => instruction.id === step)
    const last = of?.ticked.at(-1)?.entry
    const begun = state !== 'done' && last ? 'begun' : workStateWords[state]
    const when = last?.when === undefined ? undefined : whenText(last.when)
    const told = [last?.by, when].filter((part) => part !== undefined && part !== '').join(', ')
    return `${state === 'next' ? begun.toUpperCase() : begun}: ${words}${told === '' ? '' : ` (${told})`}`
  })
  const half = Math.ceil(items.length / 2)
  return [
    {
      kind: 'heading',
      text: 'The whole job',
      aside: `${done} of ${counted(list.length, 'thing', 'things')} done`,
    },
    {
      kind: 'beside',
      parts: [items.slice(0, half), items.slice(half)].map((some) => ({
        width: 6,
        blocks: [{ kind: 'list', look: 'dash', items: some }],
      })),
    },
  ]
}

/** Machines whose steps are all done: moved again they spoil what was measured. */
function finished(steps: readonly StepSoFar[]): string[] {
  const moving = steps.filter(({ instruction }) => instruction.kind !== 'read')
  const bodies = [...new Set(moving.map(({ instruction }) => instruction.body))]
  return bodies.flatMap((id) => {
    const own = moving.filter(({ instruction }) => instruction.body === id)
    const [first] = own
    return first && own.every(({ isDone }) => isDone)
      ? [
          `${capital(inSentence(first.instruction.name))}: all that was to move there is done. Packs and bolts stay as they are.`,
        ]
      : []
  })
}

const untouchedNow = (job: Drawn): string[] => {
  const { train, answer } = job
  return untouched(job, answer.status === 'planned' ? movedBodies(train, answer) : [])
}

/** What only those who leave can say. */
const unknown = [
  'bolts loose now: which',
  'on jacks, blocks or a sling now',
  'dials left, and what they show',
  'flanges, guards, couplings open now',
  'locks, tags, permits: whose, how long',
  'seen, and not in the plan',
]
