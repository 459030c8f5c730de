import type { PlanAnswer } from '../answer'
import { asFound } from '../../../mechanics/readings/asFound'
import type { TrainDocument } from '../../../document/schema'
import type { Train } from '../../../mechanics/train'
import { workRecordOf } from '../../../document/work'
import { nextRound, verdictOf, worthMoving } from './doubt'

/** How a train stands that was worked on and read again, and what its plan is then worth. */
export interface AfterWork {
  /** True where the train is done and what its plan would change is less than the errors of changing it. */
  readonly settled: boolean
  /** In the place of what the plan asks for; empty unless settled. */
  readonly headline: string
  /** What was judged, and what follows for the plan. */
  readonly words: string
}

/**
 * The judgment of the loop on a plan that follows work: by the readings as they now are and their
 * doubt. Nothing before the first round: a train that nobody worked on is not called done.
 */
export function afterWork(
  { record }: TrainDocument,
  train: Train,
  answer: PlanAnswer,
): AfterWork | undefined {
  const rounds = (workRecordOf(record)?.pages ?? []).filter(({ kind }) => kind === 'step').length
  if (rounds === 0) return undefined
  const found = train.couplings.map(asFound)
  const { verdict, words } = verdictOf(train, found)
  const open = { settled: false, headline: '' }
  if (verdict !== 'done' || answer.status === 'impossible') return { ...open, words }
  if (answer.status !== 'planned') return { ...open, words: `${words} ${bringsErrors}` }
  const next = nextRound(train, found, answer.floor)
  return worthMoving(answer.standingShare, answer.worstShare, next)
    ? {
        ...open,
        words: `${words} The plan would better that by more than its own errors; the responsible engineer decides whether it is worth the work.`,
      }
    : {
        settled: true,
        headline: 'Nothing more needs to be done.',
        words: `${words} What a plan would still change is less than readings, shims and slides can be told by. ${bringsErrors}`,
      }
}

const bringsErrors = 'Moving more would only bring new errors.'
