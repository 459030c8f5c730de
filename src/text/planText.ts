import { bestShareText } from '../language/roundedAmounts'
import { shareText } from '../language/amounts'
import { keptInWords } from '../language/keptWords'
import { fineSign, toFine, type Micrometres } from '../mechanics/units'
import type { Train } from '../mechanics/train'
import type { ProofAnswer } from '../engine/plan/answer'
import type { DrawnAnswer } from '../scene/drawnAnswer'
import { displayedSure } from '../engine/chance/sentence'
import { displayedPlan, workedSentence } from '../engine/fieldwork/displayed'
import { bindingText } from './bindingText'
import { asFoundShares, couplingsText } from './couplingsText'
import { conflictText } from './conflictText'
import { sidesInWords } from '../language/sides'
import { feetText } from './feetText'
import { heading, paragraph, sheetText } from './layout'
import { packsText } from './packsText'
import { expectedText } from './readingsText'
import { readyLine, readyText } from './readyText'
import { remediesText } from './remediesText'
import { cautionText, findingsText, notEnteredText } from './remarksText'
import { tidy } from '../language/tidy'
import { sentenceText } from '../engine/plan/sentence'
import { sureText } from './sureText'
import { certificateSentences } from './certificateText'
import { unfinishedSentences } from './unfinishedWords'
import { stepsText } from './stepsText'
import { baseText } from './baseText'
import { coupledText } from './coupledText'
import { axialText } from './axialText'
import { statorText } from './statorText'
import { axialShown } from '../scene/axialShown'
import { teethText } from './teethText'
import { leastProven } from '../engine/plan/teethWords'
import { surveysText } from './surveysText'

/** An answer, or what was put by hand, as people read it, in lines of at most 80 characters. */
export function planText(train: Train, answer: DrawnAnswer): string {
  const ready = answer.status === 'by hand' ? undefined : answer.ready
  const reasons = answer.status === 'impossible' ? answer.reasons : undefined
  const parts = partsOf(train, answer)
  const shown = answer.status === 'by hand' ? answer : displayedPlan(answer)
  return sheetText([
    ...opening(train),
    ...paragraph(
      sentenceText(answer.status === 'by hand' ? answer.sentence : workedSentence(train, answer)),
    ),
    ...(ready ? readyLine(ready) : []),
    ...(answer.status === 'by hand' || answer.status === 'stopped'
      ? []
      : unfinishedSentences(answer).flatMap((line) => paragraph(line))),
    ...(reasons ? [...conflictText(reasons.conflicts), ...remediesText(reasons)] : []),
    ...(ready?.provisional === true ? parts.map(provisional) : parts).flat(),
    ...(ready ? readyText(ready) : []),
    ...('sure' in answer ? sureText(train, displayedSure(answer.sure)) : []),
    ...baseText(train, ready),
    ...coupledText(train),
    ...axialText(train, axialShown(train, answer)),
    ...statorText(train, shown.stators),
    ...teethText(train, answer),
    ...surveysText(train, answer),
    ...findingsText(answer.findings),
    ...notEnteredText(answer.notEntered),
    ...proofText(train, answer),
    ...cautionText(),
    '',
  ])
}

/** What is to be done and what comes of it, each part under its heading. */
function partsOf(train: Train, answer: DrawnAnswer): string[][] {
  switch (answer.status) {
    case 'planned': {
      const displayed = displayedPlan(answer)
      const { rounded, prices = [], steps } = answer
      return [
        feetText(train, displayed),
        rounded ? packsText(train, rounded) : [],
        couplingsText(train, displayed),
        bindingText(train, prices),
        expectedText(train, displayed.expected),
        steps ? stepsText(train, steps) : [],
      ]
    }
    case 'by hand':
      return [
        feetText(train, answer),
        couplingsText(train, answer),
        expectedText(train, answer.expected),
      ]
    case 'in-tolerance':
      return [couplingsText(train, answer), answer.steps ? stepsText(train, answer.steps) : []]
    case 'impossible':
    case 'unproven':
    case 'stopped': {
      const about = `tolerance used as found; ${shareText(answer.share)} was asked for`
      return [
        [...heading('COUPLINGS', about), ...asFoundShares(train, answer.asFound, answer.share)],
      ]
    }
  }
}

/** A part of the text, from its heading on, marked as one whose figures soft-foot work will change. */
const provisional = ([blank, ...part]: string[]): string[] =>
  blank === undefined
    ? []
    : [blank, 'PROVISIONAL until the soft feet are plane and the couplings read anew', ...part]

/** The name, and which side is which. */
export function opening(train: Train): string[] {
  return [...paragraph(train.name), ...paragraph(sidesInWords(train, 'train')), '']
}

function proofText(train: Train, answer: DrawnAnswer): string[] {
  const { floor } = answer
  const floorLine =
    floor === null
      ? []
      : [
          `The best reachable by any allowed move, with the same machines fixed, is ${bestShareText(floor, answer.share)} of tolerance${keptInWords(train) === '' ? '' : ', what is kept free of it counted'}${answer.standingKept !== undefined ? `; as found, counted alike, ${shareText(answer.standingKept)}` : ''}.`,
        ]
  const lines = [...proofLines(train, answer), ...floorLine]
  if (lines.length === 0) return []
  return [...heading('PROOF'), ...lines.flatMap((line) => paragraph(line, '  '))]
}

function proofLines(train: Train, answer: DrawnAnswer): string[] {
  const exact = (value: Micrometres, round?: 'down') => exactText(train, value, round)
  const violation = ({ worstViolation }: ProofAnswer) =>
    `Worst violation of any limit: ${exact(worstViolation)}.`
  switch (answer.status) {
    case 'planned': {
      const { proof, cost } = answer
      return [
        `Proven: no cheaper plan for these numbers${(answer.teeth ?? []).some(({ side }) => side !== undefined) ? ' and these sides' : ''}. This one costs ${exact(cost)}; none costs less than ${exact(proof.bound, 'down')}; gap ${exact(proof.gap)}.`,
        ...leastProven(train, answer.teeth),
        violation(proof),
        `Checked by: ${proof.checkedBy}.`,
      ]
    }
    case 'in-tolerance':
      return [
        'Standing still costs nothing, and nothing costs less. Every coupling was measured again in every state, with nothing moved.',
        violation(answer.proof),
      ]
    case 'unproven': {
      const { proof } = answer
      return [
        `The plan that was found costs ${exact(proof.gap)} more than the bound of ${exact(proof.bound)}; ${violation(proof).toLowerCase()} It is not shown.`,
      ]
    }
    case 'impossible':
      return answer.certificate ? certificateSentences(train, answer.certificate) : []
    case 'stopped':
    case 'by hand':
      return []
  }
}

/** A thousand times finer than people read, so that a proof can be judged. */
function exactText(train: Train, value: Micrometres, round?: 'down'): string {
  const decimals = { um: 3, mm: 6, mil: 4 }[train.units.fine]
  const unit = fineSign[train.units.fine]
  const size = tidy(toFine(value, train.units))
  if (size === 0) return 'none'
  const step = 10 ** decimals
  const digits = (round ? Math.floor(size * step) / step : size).toFixed(decimals)
  return /[1-9]/.test(digits)
    ? `${digits} ${unit}`
    : `under ${(10 ** -decimals).toFixed(decimals)} ${unit}`
}
