import { shareText } from '../../../language/amounts'
import { counted } from '../../../language/names'
import type { Due, TrainState, Urgency } from './trainState'

/** What trains are gathered under. */
export const siteWords = (site: string): string => site || 'no site entered'

/** When something is due, as people say it. */
const urgencyWords: Readonly<Record<Urgency, string>> = {
  now: 'now',
  'next stop': 'at the next stop',
  open: 'not known',
}

/** How much of its tolerance the tightest coupling uses, and which that is in which state. */
export const tightestWords = ({ tightest, where }: TrainState): string =>
  `${shareText(tightest.share)} (${where})`

/** The day a train was last aligned, as people read it. */
export const alignedWords = ({ aligned }: TrainState): string => aligned?.said ?? 'not written down'

/** Why something is due, a part of a sentence. */
export function dueWords(due: Due, { tightest, asked, every }: TrainState): string {
  switch (due.is) {
    case 'over tolerance':
      return `beyond its tolerance by the readings entered: ${moreThan(tightest.share, 1)}`
    case 'over the share':
      return `over the ${shareText(asked)} that is asked for, by the readings entered: ${moreThan(tightest.share, asked)}`
    case 'work begun':
      return `work is begun and not read to its end: ${counted(due.entries, 'entry', 'entries')} after the readings entered`
    case 'trim':
      return `the hot check "${due.check}" found ${shareText(due.share)} of the tolerance used as it ran`
    case 'interval':
      return `to be looked at every ${counted(every ?? 0, 'month', 'months')}: due since ${due.since}`
    case 'no date':
      return 'when it was last aligned is not written down'
  }
}

/** A share that is over another is never told by the same number. */
const moreThan = (share: number, asked: number): string =>
  shareText(share) === shareText(asked) ? `just over ${shareText(asked)}` : shareText(share)

/** What is due of a train and when, in one line; where nothing is, when the next look at it is. */
export function dueLine(state: TrainState): string {
  const [first, ...rest] = state.due
  if (first)
    return [
      `${urgencyWords[first.when]}: ${dueWords(first, state)}`,
      ...rest.map(
        (due) =>
          `${due.when === first.when ? '' : `${urgencyWords[due.when]}: `}${dueWords(due, state)}`,
      ),
    ].join('; ')
  return state.next === undefined
    ? 'nothing is due; how often it is looked at is not entered'
    : `nothing is due before ${state.next}`
}
