import { workRecordOf } from '../document/work'
import type { Instruction } from '../engine/fieldwork/steps/instructions'
import { inSentence } from '../language/names'
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

function stepCard({ document }: Drawn, instruction: Instruction): StepCard {
  const { id, number, words, breaks, before, cautions, lifts, dials, readings, stop } = instruction
  const done = (workRecordOf(document.record)?.work ?? []).filter(
    (entry) => entry.done && entry.step === id,
  )
  const last = done.at(-1)
  return {
    ...{ id, number, words, breaks, before, cautions, lifts, dials },
    expected: readings,
    ...(stop !== undefined && { stop }),
    sign: last
      ? ['done', `time ${last.when ?? ''}`.trim(), `by ${last.by ?? ''}`.trim()]
      : ['done', 'time', 'by'],
  }
}
