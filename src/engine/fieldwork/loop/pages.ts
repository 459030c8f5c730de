import type { TrainDocument } from '../../../document/schema'
import type { GapAgain, ReadAgain, RecordFacts, WorkDone } from '../../../document/work'
import type { DocumentUnits } from '../../../mechanics/units'
import { shareText } from '../../../language/amounts'
import type { StandingAnswer } from '../../plan/answer'
import type { Comparison } from './compare'
import type { PageDraft } from './record'
import { stepsDoneText } from './stepsDone'

/** Who writes and when; the engine has no clock. */
export interface Signed {
  readonly when: string
  readonly by?: string
}

/** What stands on a page besides: facts as entered, and what was accepted although it is open. */
interface Besides {
  readonly facts?: RecordFacts
  readonly open?: readonly string[]
}

const besides = ({ facts, open = [] }: Besides) => ({
  ...(facts && { facts }),
  ...(open.length > 0 && { open }),
})

/** Open things are told in the page's own words, with the words and the name that accept them. */
const accepted = ({ facts, open = [] }: Besides): string =>
  open.length === 0
    ? ''
    : ` Open: ${open.join(' ')} Accepted${facts?.acceptedBy === undefined ? '' : ` by ${facts.acceptedBy}`}: ${facts?.acceptance ?? 'not said why'}.`

const signed = ({ when, by }: Signed) => ({ when, ...(by !== undefined && { by }) })

/** The job without the record that the page goes into. */
function jobOf(document: TrainDocument): TrainDocument {
  const job = { ...document }
  delete job.record
  return job
}

/** How every coupling stands; its lines in the document's units, as all that a record keeps. */
export type RecordedStanding = Pick<StandingAnswer, 'standingShare' | 'share' | 'asFound'>

const standing = ({ standingShare, share }: RecordedStanding): string =>
  `The tightest coupling uses ${shareText(standingShare)} of its tolerance; ${shareText(share)} was asked for.`

/** Before anything moves: the whole job as it was entered, and where every coupling stands. */
export const asFoundPage = (
  document: TrainDocument,
  answer: RecordedStanding,
  sign: Signed,
  more: Besides = {},
): PageDraft => ({
  kind: 'as found',
  ...signed(sign),
  words: `As found. ${standing(answer)}`,
  content: {
    job: jobOf(document),
    asFound: answer.asFound,
    standingShare: answer.standingShare,
    ...besides(more),
  },
})

/** "Nothing needs to move" is a record too. */
export const nothingMovedPage = (
  document: TrainDocument,
  answer: RecordedStanding,
  sign: Signed,
  more: Besides = {},
): PageDraft => ({
  kind: 'nothing moved',
  ...signed(sign),
  words: `Nothing needs to move, and nothing was moved. ${standing(answer)}${accepted(more)}`,
  content: {
    job: jobOf(document),
    asFound: answer.asFound,
    standingShare: answer.standingShare,
    ...besides(more),
  },
})

/** What came of a round beside the machine: work done, what was read at stop points and after it, and how many steps that is. */
interface RoundDone {
  readonly work: readonly WorkDone[]
  readonly read: readonly ReadAgain[]
  /** Gaps between shaft ends measured with them. */
  readonly gaps?: readonly GapAgain[]
  readonly steps: { readonly done: number; readonly of: number }
  /** Of all these numbers: whoever reads the page later may have others. */
  readonly units: DocumentUnits
}

/** What was done, and what was read after it beside what was expected, in the document's units. */
export const stepPage = (
  { work, read, gaps = [], steps, units }: RoundDone,
  comparison: Comparison | undefined,
  sign: Signed,
): PageDraft => ({
  kind: 'step',
  ...signed(sign),
  words: `${stepsDoneText(steps)}.${comparison ? ` ${comparison.words}` : ''}`,
  content: {
    work,
    units,
    ...(read.length > 0 && { read }),
    ...(gaps.length > 0 && { gaps }),
    ...(comparison && { comparison }),
  },
})

/** When all is done: the whole job with its last readings, and where every coupling stands. */
export const recordAsLeft = (
  document: TrainDocument,
  answer: RecordedStanding,
  sign: Signed,
  more: Besides = {},
): PageDraft => ({
  kind: 'as left',
  ...signed(sign),
  words: `As left. ${standing(answer)}${accepted(more)}`,
  content: {
    job: jobOf(document),
    asLeft: answer.asFound,
    standingShare: answer.standingShare,
    ...besides(more),
  },
})
