import { workRecordOf } from '../document/work'
import type { Instruction } from '../engine/fieldwork/steps/instructions'
import { setReadings } from '../engine/fieldwork/steps/stopReadings'
import type { ExpectedAnswer } from '../engine/plan/answer'
import { hasMoves } from '../engine/plan/moves'
import { firm } from '../language/firmSpaces'
import { capital, inSentence } from '../language/names'
import { whenText } from '../language/whenText'
import type { Train } from '../mechanics/train'
import type { Drawn } from './job'
import type { Block, StepCard } from './page'

/** The steps of one body by their numbers; where another body's steps come between, that they do. */
export function stepBlocks(job: Drawn, body: string): Block[] {
  const own = job.instructions.filter((one) => one.body === body)
  return own.flatMap((instruction, i): Block[] => {
    const next = own[i + 1]
    const between =
      next && next.number > instruction.number + 1
        ? job.instructions.find(({ number }) => number === instruction.number + 1)
        : undefined
    return [
      { kind: 'step', step: stepCard(job, instruction) },
      ...(between
        ? [
            {
              kind: 'text',
              look: 'strong',
              text: `Next comes step ${between.number}, on the page of ${inSentence(between.name)}.`,
            } as const,
          ]
        : []),
    ]
  })
}

function stepCard(job: Drawn, instruction: Instruction): StepCard {
  const { id, number, words, breaks, before, cautions, lifts, dials, stop } = instruction
  const done = (workRecordOf(job.document.record)?.work ?? []).filter(
    (entry) => entry.done && entry.step === id,
  )
  const last = done.at(-1)
  return {
    ...{ id, number, words, breaks, before, cautions, lifts, dials },
    expected: expectedLines(job, instruction),
    ...(stop !== undefined && { stop }),
    sign: last
      ? ['done', `time ${whenText(last.when ?? '')}`.trim(), `by ${last.by ?? ''}`.trim()]
      : ['done', 'time', 'by'],
  }
}

/** What the couplings should show after a step; where that is what they show when all is done, the page that has it. */
function expectedLines(
  { train, answer }: Drawn,
  { expected, readings, step }: Instruction,
): string[] {
  const last = hasMoves(answer) ? answer.expected : []
  return expected.map(({ coupling, name }, i) => {
    const own = step.expected.filter((entry) => entry.coupling === coupling)
    const ends = own.every((entry) =>
      last.some(
        (one) => one.coupling === coupling && one.set === entry.set && same(train, one, entry),
      ),
    )
    return ends && own.length > 0
      ? `${capital(name)}: as expected when all is done; its page of readings has what is good, and boxes for it.`
      : readingsKept(readings[i] ?? '')
  })
}

/** No line ends between an hour, what is read there and from where to where that is good: "at 3: −13.1 (−14.6 to −11.6)". */
const readingsKept = (line: string): string =>
  line.replace(/at \d[\d:]*: [^\s;,]+( \([^)]*\))?/g, (text) => text.replaceAll(' ', firm))

/** Whether two expectations of a set show alike in every digit. */
function same(train: Train, one: ExpectedAnswer, other: ExpectedAnswer): boolean {
  const coupling = train.couplings.find(({ id }) => id === one.coupling)
  const set = coupling?.found[one.set]
  if (!set) return false
  const told = (entry: ExpectedAnswer) =>
    setReadings(train, set, entry).map(({ should, good }) => `${should} ${good}`)
  return told(one).join() === told(other).join()
}
