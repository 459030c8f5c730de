import { fineDigits } from '../units/format'
import { fineSign, micrometresPer } from '../units/units'
import { lineInWords } from '../sheet/readingsText'
import { capital } from '../sheet/words'
import type { Train } from '../train/model'
import type { ExpectedAnswer } from '../plan/answer'
import type { StepAnswer } from '../steps/answer'
import type { Drawn } from './job'
import type { Block, Chapter, StepCard } from './page'
import { stepDials } from './stepDials'
import { holdWords, sentence } from './words'

/** The steps in their order, with what to watch, where to stop, and what the dials should show then. */
export function orderPages({ train, answer }: Drawn): Chapter[] {
  const { steps } = answer
  if (!steps || steps.steps.length === 0) return []
  return [
    {
      section: 'order',
      title: 'Order of work',
      blocks: [
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
        ...steps.steps.map((step, i): Block => ({
          kind: 'step',
          step: stepCard(train, step, i + 1),
        })),
      ],
    },
  ]
}

function stepCard(train: Train, step: StepAnswer, number: number): StepCard {
  return {
    id: step.id,
    number,
    words: step.words,
    breaks: step.breaks.map(({ words, instead }) => `LIMIT PASSED: ${words} ${instead}`),
    cautions: step.cautions.map(sentence),
    dials: stepDials(train, step),
    expected: expectedLines(train, step),
    ...(step.hold !== undefined && { hold: sentence(holdWords(step.hold)) }),
  }
}

/** What the couplings should show after a step, where somebody stops to read; and what cannot be judged by it. */
function expectedLines(train: Train, step: StepAnswer): string[] {
  if (step.hold === undefined && step.kind !== 'read') return []
  return train.couplings.flatMap((coupling) => {
    const sets = step.expected.filter((entry) => entry.coupling === coupling.id)
    if (sets.length === 0) return []
    const judged = step.judge.find((entry) => entry.coupling === coupling.id)
    const not =
      judged !== undefined && judged.judge === 'not yet'
        ? ` Not to be judged yet: ${judged.why}.`
        : ''
    return [
      `${capital(coupling.name)}, in ${fineSign[train.units.fine]}: ${sets.map((entry) => setLine(train, entry)).join('; ')}.${not}`,
    ]
  })
}

function setLine(train: Train, entry: ExpectedAnswer): string {
  const lead = `set ${entry.set + 1}`
  const coupling = train.couplings.find(({ id }) => id === entry.coupling)
  if (!('readings' in entry))
    return coupling ? `${lead} ${lineInWords(train, coupling, entry.offset, entry.slope)}` : lead
  const gap = coupling?.found[entry.set]?.kind === 'gap'
  const texts = entry.readings.map(([hour, value]) => {
    const digits = fineDigits(Math.abs(value * micrometresPer[train.units.fine]), train.units)
    const sign = gap || !/[1-9]/.test(digits) ? '' : value > 0 ? '+' : '\u2212'
    return `at ${hour} ${sign}${/[1-9]/.test(digits) ? digits : '0'}`
  })
  return `${lead} ${texts.join(', ')}`
}
