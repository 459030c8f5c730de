import type { TrainDocument } from '../../../document/schema'
import { shareText } from '../../../language/amounts'
import { listed } from '../../../language/names'
import type { Train } from '../../../mechanics/train'
import type { HotCheckAnswer } from '../hotCheck/answer'
import { hotCheckAnswers } from '../hotCheck/hotChecks'

/** Whether a hot check agrees with what the plan counts on, in words. */
interface HotCheckItem {
  readonly check: string
  readonly state: 'in' | 'bad'
  readonly words: string
}

/**
 * Every hot check that is used. One is bad where it shows that a coupling ran beyond its tolerance (19 times of 20) and
 * the growth in use expects less than it shows: a plan by that growth, or none at all, would run like that again. Where
 * the growth that was found is in use it is expected, and planned for.
 */
export const hotCheckItems = (document: TrainDocument, train: Train): HotCheckItem[] =>
  hotCheckAnswers({ document, train }).map((answer) => {
    const beyond = unexpected(answer)
    const name = `hot check \u201c${answer.name}\u201d`
    if (beyond.length === 0)
      return {
        check: answer.check,
        state: 'in',
        words: `${name}: nothing is shown to run beyond its tolerance that the growth in use does not expect`,
      }
    const state = train.states.find(({ id }) => id === answer.state)?.name ?? answer.state
    const ran = beyond.map(({ coupling, share }) => {
      const called = train.couplings.find(({ id }) => id === coupling)?.name ?? coupling
      return `${called} ran at ${shareText(share.running)} of its tolerance, and the growth in use expects ${shareText(share.expected)}`
    })
    return {
      check: answer.check,
      state: 'bad',
      words: `${name}: in \u201c${state}\u201d ${listed(ran)}; take the growth that it found before anything is decided by these numbers`,
    }
  })

/** Couplings that are shown to have run beyond their tolerance, and were not expected to. */
const unexpected = ({ couplings }: HotCheckAnswer) =>
  couplings.flatMap(({ coupling, share }) =>
    share && share.low > 1 && share.expected < share.low ? [{ coupling, share }] : [],
  )
