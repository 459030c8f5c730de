import { workRecordOf } from '../train/work'
import { sentenceOf } from '../sheet/sentence'
import { capital, inSentence } from '../sheet/words'
import type { Body } from '../train/model'
import type { Drawn } from './job'
import type { Chapter } from './page'
import { movedBodies, sentence } from './words'

/** One page for whoever comes next: what is done, what is next, what must not be touched. */
export function handoverPage(job: Drawn): Chapter[] {
  const { train, answer, document } = job
  if (answer.status !== 'planned') return []
  const done = (workRecordOf(document.record)?.work ?? []).filter((one) => one.done)
  return [
    {
      section: 'handover',
      title: 'Handover',
      blocks: [
        { kind: 'text', look: 'strong', text: sentenceOf(train, answer).headline },
        { kind: 'heading', text: 'Done', aside: 'tick, with time and name' },
        {
          kind: 'table',
          tall: true,
          columns: [
            { head: 'machine', width: 3 },
            { head: 'packs in', width: 1.4 },
            { head: 'slid', width: 1.4 },
            { head: 'bolts tight', width: 1.4 },
            { head: 'read again', width: 1.4 },
            { head: 'time, by', width: 2.6 },
          ],
          rows: movedBodies(train, answer).map(({ name }) => [name, '', '', '', '', '']),
        },
        ...(done.length === 0
          ? []
          : ([
              {
                kind: 'list',
                look: 'dash',
                items: done.map(({ step, body, foot, by, when }) =>
                  sentence(
                    `Recorded: ${step}, ${body}${foot === undefined ? '' : ` foot ${foot}`}${by === undefined ? '' : `, by ${by}`}${when === undefined ? '' : `, ${when}`}`,
                  ),
                ),
              },
            ] as const)),
        { kind: 'heading', text: 'Next' },
        { kind: 'blanks', columns: 2, labels: ['', '', '', ''] },
        { kind: 'heading', text: 'Must not be touched' },
        { kind: 'list', look: 'dash', items: untouched(job) },
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

/** Held machines, feet that may not move, and what was set before. */
function untouched({ train, answer }: Drawn): string[] {
  const name = (body: Body) => capital(inSentence(body.name))
  const keyed = train.bodies.flatMap((body) =>
    body.held
      ? []
      : body.feet.flatMap(({ id, mayShim, maySlide }) => [
          ...(mayShim ? [] : [`Foot ${id} of ${inSentence(body.name)}: no shim may go in or out.`]),
          ...(maySlide ? [] : [`Foot ${id} of ${inSentence(body.name)}: it may not slide.`]),
        ]),
  )
  const still = train.bodies.filter(
    (body) => !body.held && !movedBodies(train, answer).includes(body),
  )
  return [
    ...train.bodies
      .filter(({ held }) => held)
      .map(
        (body) =>
          `${name(body)}: held${body.anchored === undefined ? '' : `, ${body.anchored}`}. A dial on it must stay at 0.`,
      ),
    ...still.map((body) => `${name(body)}: stays where it is.`),
    ...keyed,
    'Brackets and dials that are set, until they have been read.',
    'Locks, tags and blinds.',
  ]
}
