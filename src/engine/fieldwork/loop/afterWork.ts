import type { PlanAnswer } from '../answer'
import type { ReadyAnswer } from '../ready/answer'
import type { AsFound } from '../../../mechanics/readings/asFound'
import { foundLines } from '../../../mechanics/uncertainty/foundLines'
import type { TrainDocument } from '../../../document/schema'
import type { Train } from '../../../mechanics/train'
import { workRecordOf } from '../../../document/work'
import { differenceOpen } from './differenceOpen'
import { nextRound, verdictOf, worthMoving, type Verdict } from './doubt'

/** How a train stands that was worked on and read again, and what its plan is then worth. */
export interface AfterWork {
  /**
   * "done": within the share asked for, with readings that agree and everything in that must be; "not worth it": in
   * tolerance, and what a plan would change is less than the errors of changing it; else "open".
   */
  readonly state: 'done' | 'not worth it' | 'open'
  /** In the place of what the plan asks for; empty where that stands. */
  readonly headline: string
  /** What was judged, and what follows for the plan. */
  readonly words: string
}

/**
 * The judgment of the loop on a plan that follows work: by the readings as they now are and their doubt, by what
 * they differed by from what was expected, and by whether the sheet is ready. Nothing before the first round: a
 * train that nobody worked on is not called done.
 * @param ready what must be in before anything moves, or before it is called done; unknown counts as not ready
 */
export function afterWork(
  { record }: TrainDocument,
  train: Train,
  answer: PlanAnswer,
  ready: ReadyAnswer | undefined = answer.ready,
): AfterWork | undefined {
  const pages = workRecordOf(record)?.pages ?? []
  const rounds = pages.filter(({ kind }) => kind === 'step')
  const last = rounds.at(-1)
  if (!last) return undefined
  const found = foundLines(train)
  const judged = verdictOf(train, found)
  const open = (words: string): AfterWork => ({
    state: 'open',
    headline:
      answer.status === 'in-tolerance' ? 'Nothing asks to be moved, and it is not done.' : '',
    words,
  })
  if (judged.verdict === 'over the share') return overTheShare(train, found, answer, judged)
  if (judged.verdict !== 'in') return open(judged.words)
  const differs = differenceOpen(last.content)
  if (differs !== undefined)
    return open(
      `Not done: in round ${rounds.length} the readings were not what was expected. ${differs} Read again with nothing moved: what repeats stands. ${judged.words}`,
    )
  if (!ready) return open(`Not judged: what must be in is not worked out yet. ${judged.words}`)
  if (!ready.ready) return open(`Not done. ${ready.sentence} ${judged.words}`)
  return {
    state: 'done',
    headline: 'Nothing more needs to be done.',
    words: `Done: ${judged.words} ${bringsErrors}`,
  }
}

/** In tolerance, and not where it was asked to be: a matter for whoever answers for it. */
function overTheShare(
  train: Train,
  found: readonly AsFound[],
  answer: PlanAnswer,
  { words }: Verdict,
): AfterWork {
  if (answer.status !== 'planned') return { state: 'open', headline: '', words }
  const next = nextRound(train, found, answer.floor)
  return worthMoving(answer.standingShare, answer.worstShare, next)
    ? {
        state: 'open',
        headline: '',
        words: `${words} The plan would better that by more than its own errors; the responsible engineer decides whether it is worth the work.`,
      }
    : {
        state: 'not worth it',
        headline: 'What is left to move is less than the work can be told by.',
        words: `${words} What a plan would still change is less than readings, shims and slides can be told by. ${bringsErrors} Accept it as it is, by name and in writing, or read it more closely.`,
      }
}

const bringsErrors = 'Moving more would only bring new errors.'
