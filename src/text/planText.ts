import { shareText } from '../language/amounts'
import { fineSign, toFine } from '../mechanics/units'
import type { Train } from '../mechanics/train'
import type { ProofAnswer } from '../engine/plan/answer'
import type { PlanAnswer } from '../engine/fieldwork/answer'
import { displayedPlan } from '../engine/fieldwork/displayed'
import { bindingText } from './bindingText'
import { asFoundShares, couplingsText } from './couplingsText'
import { conflictText } from './conflictText'
import { towardSide } from '../language/sides'
import { feetText } from './feetText'
import { heading, paragraph } from './layout'
import { packsText } from './packsText'
import { expectedText } from './readingsText'
import { readyLine, readyText } from './readyText'
import { remediesText } from './remediesText'
import { cautionText, findingsText, notEnteredText } from './remarksText'
import { tidy } from '../language/tidy'
import { sentenceOf, sentenceText } from '../engine/plan/sentence'
import { stepsText } from './stepsText'

/** An answer as people read it, in lines of at most 80 characters. */
export function planText(train: Train, answer: PlanAnswer): string {
  const shown = answer.status === 'planned' || answer.status === 'in-tolerance'
  const displayed = displayedPlan(answer)
  const later = (part: string[]) => (answer.ready?.provisional === true ? provisional(part) : part)
  return [
    ...opening(train),
    ...paragraph(sentenceText(sentenceOf(train, answer))),
    ...(answer.ready ? readyLine(answer.ready) : []),
    ...conflictText(answer),
    ...remediesText(answer),
    ...(answer.status === 'planned'
      ? [...later(feetText(train, displayed)), ...later(packsText(train, answer))]
      : []),
    ...later(
      shown
        ? couplingsText(train, displayed)
        : [
            ...heading(
              'COUPLINGS',
              `share of tolerance as found; ${shareText(answer.share)} was asked for`,
            ),
            ...asFoundShares(train, answer.asFound, answer.share),
          ],
    ),
    ...(answer.status === 'planned' ? later(bindingText(train, answer)) : []),
    ...(answer.status === 'planned' ? later(expectedText(train, displayed)) : []),
    ...(shown && answer.steps ? later(stepsText(train, answer.steps)) : []),
    ...(answer.ready ? readyText(answer.ready) : []),
    ...findingsText(answer.findings),
    ...notEnteredText(answer.notEntered),
    ...proofText(train, answer),
    ...cautionText(),
    '',
  ].join('\n')
}

/** A part of the text, from its heading on, marked as one whose figures soft-foot work will change. */
const provisional = ([blank, ...part]: string[]): string[] =>
  blank === undefined
    ? []
    : [blank, 'PROVISIONAL until the soft feet are plane and the couplings read anew', ...part]

/** The name, and which side is which. */
export function opening(train: Train): string[] {
  return [
    ...paragraph(train.name),
    ...paragraph(
      `Seen from the ${train.seenFrom} end, 3 o'clock is ${towardSide(train, 1)} and 9 o'clock is ${towardSide(train, -1)}; left and right are those of the train.`,
    ),
    '',
  ]
}

function proofText(train: Train, answer: PlanAnswer): string[] {
  const { proof, floor } = answer
  const floorLine =
    floor === null
      ? []
      : [
          `The smallest worst share that any allowed move reaches with this choice held is ${shareText(floor)}.`,
        ]
  const lines = [...(proof ? proofLines(train, answer, proof) : []), ...floorLine]
  if (lines.length === 0) return []
  return [...heading('PROOF'), ...lines.flatMap((line) => paragraph(line, '  '))]
}

function proofLines(train: Train, answer: PlanAnswer, proof: ProofAnswer): string[] {
  const exact = (value: number) => exactText(train, value)
  const violation = `Worst violation of any limit: ${exact(proof.worstViolation)}.`
  switch (answer.status) {
    case 'planned':
      return [
        `Proven: no cheaper plan for these numbers. This one costs ${exact(answer.cost ?? 0)}; none costs less than ${exact(proof.bound)}; gap ${exact(proof.gap)}.`,
        violation,
        `Checked by: ${proof.checkedBy}.`,
      ]
    case 'in-tolerance':
      return [
        'Standing still costs nothing, and nothing costs less. Every coupling was measured again in every state, with nothing moved.',
        violation,
      ]
    case 'impossible':
    case 'unproven':
    case 'stopped':
      return [
        `The plan that was found costs ${exact(proof.gap)} more than the bound of ${exact(proof.bound)}; ${violation.toLowerCase()} It is not shown.`,
      ]
  }
}

/** A thousand times finer than people read, so that a proof can be judged. */
function exactText(train: Train, value: number): string {
  const decimals = { um: 3, mm: 6, mil: 4 }[train.units.fine]
  const unit = fineSign[train.units.fine]
  const size = tidy(toFine(value, train.units))
  if (size === 0) return 'none'
  const digits = size.toFixed(decimals)
  return /[1-9]/.test(digits)
    ? `${digits} ${unit}`
    : `under ${(10 ** -decimals).toFixed(decimals)} ${unit}`
}
