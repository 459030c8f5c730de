import type { TrainDocument } from '../../../document/schema'
import { shareText } from '../../../language/amounts'
import { ranAt } from '../../../language/hotCheckWords'
import { listed } from '../../../language/names'
import type { Train } from '../../../mechanics/train'
import { hotCheckAnswers } from '../hotCheck/hotChecks'

/** Whether a hot check agrees with what the plan counts on, in words. */
interface HotCheckItem {
  readonly check: string
  readonly state: 'in' | 'bad'
  readonly words: string
}

/**
 * Every hot check that is used and tells of a coupling as it ran. One is bad where it shows that a coupling ran beyond its
 * tolerance (19 times of 20) and the growth in use expects less than it shows: a plan by that growth, or none at all, would
 * run like that again. Where the growth that was found is in use it is expected, and planned for.
 */
export const hotCheckItems = (document: TrainDocument, train: Train): HotCheckItem[] =>
  hotCheckAnswers({ document, train }).flatMap(
    ({ check, name, state, couplings }): HotCheckItem[] => {
      const ran = couplings.flatMap(({ coupling, share }) => (share ? [{ coupling, share }] : []))
      if (ran.length === 0) return []
      const beyond = ran.filter(({ share }) => share.low > 1 && share.expected < share.low)
      const called = `hot check “${name}”`
      if (beyond.length === 0)
        return [
          {
            check,
            state: 'in',
            words: `${called}: nothing is shown to run beyond its tolerance that the growth in use does not expect`,
          },
        ]
      const inState = train.states.find(({ id }) => id === state)?.name ?? state
      const said = beyond.map(({ coupling, share }) => {
        const name = train.couplings.find(({ id }) => id === coupling)?.name ?? coupling
        return `${ranAt(name, share.running)}, and the growth in use expects ${shareText(share.expected)}`
      })
      return [
        {
          check,
          state: 'bad',
          words: `${called}: in “${inState}” ${listed(said)}; take the growth that it found, or find out why, before anything is decided by these numbers`,
        },
      ]
    },
  )
