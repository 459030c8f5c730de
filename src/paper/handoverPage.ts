import { workRecordOf } from '../document/work'
import { sentenceOf } from '../engine/plan/sentence'
import { capital, inSentence } from '../language/names'
import type { Body } from '../mechanics/train'
import type { Drawn } from './job'
import type { Block, Chapter } from './page'
import { carriedWords, heldWords, movedBodies } from './words'

/** One page for whoever comes next: what is done, what is next, what must not be touched. */
export function handoverPage(job: Drawn): Chapter[] {
  const { train, answer, plan } = job
  if (answer.status !== 'planned') return []
  const moved = movedBodies(train, answer)
  return [
    {
      section: 'handover',
      title: 'Handover',
      blocks: [
        { kind: 'text', look: 'strong', text: sentenceOf(train, plan).headline },
        { kind: 'heading', text: 'Done', aside: 'tick, with time and name' },
        doneTable(job, moved),
        { kind: 'heading', text: 'Next' },
        { kind: 'blanks', columns: 2, labels: ['', '', '', ''] },
        { kind: 'heading', text: 'Must not be touched' },
        { kind: 'list', look: 'dash', items: untouched(job, moved) },
        { kind: 'heading', text: 'Seen, and not in the plan' },
        { kind: 'blanks', columns: 2, labels: ['', '', '', ''] },
        {
          kind: 'blanks',
          columns: 3,
          labels: ['handed over by', 'taken over by', 'date and time'],
        },
      ],
    },
  ]
}

/** Steps in their order with what the record says of them; machines where there is no order. */
function doneTable({ document, instructions }: Drawn, moved: readonly Body[]): Block {
  const work = (workRecordOf(document.record)?.work ?? []).filter(({ done }) => done)
  const rows =
    instructions.length > 0
      ? instructions.map(({ id, number, name, short }) => {
          const told = work.filter(({ step }) => step === id)
          const words = `${number}. ${name}: ${short}`
          if (told.length === 0) return [words, '', '', '']
          const last = told.at(-1)
          return [words, 'done', last?.when ?? '', last?.by ?? '']
        })
      : moved.map((body) => [body.name, '', '', ''])
  return {
    kind: 'table',
    tall: true,
    columns: [
      { head: 'step', width: 5 },
      { head: 'done', width: 1.4 },
      { head: 'time', width: 2.4 },
      { head: 'by', width: 2.4 },
    ],
    rows,
  }
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
