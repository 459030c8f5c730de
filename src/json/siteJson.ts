import { firstRefusals, type Refusal } from '../document/refusal'
import { dueWords } from '../engine/fieldwork/site/dueWords'
import type { TrainState } from '../engine/fieldwork/site/trainState'
import type { Day } from '../mechanics/day'
import type { Train } from '../mechanics/train'

/** A train of a site with the file it lies in. */
export interface SiteTrain {
  readonly file: string
  readonly train: Train
  readonly state: TrainState
}

/** A file that is no train. */
export interface UnreadTrain {
  readonly file: string
  readonly refused: readonly Refusal[]
}

/** How every train stands on a day; shares are parts of the tolerance. */
export const siteJson = (
  today: Day,
  trains: readonly SiteTrain[],
  unread: readonly UnreadTrain[],
) => ({
  today,
  trains: trains.map(({ file, train, state }) => ({
    ...{ file, name: state.name },
    ...(state.site !== '' && { site: state.site }),
    ...(state.aligned !== undefined && { aligned: state.aligned.said }),
    tightest: {
      coupling: train.couplings[state.tightest.coupling]?.id ?? '',
      ...{ state: state.tightest.state, share: state.tightest.share },
    },
    share: state.asked,
    ...(state.every !== undefined && { checkEvery: state.every }),
    ...(state.next !== undefined && { next: state.next }),
    due: state.due.map((due) => ({
      ...{ is: due.is, when: due.when },
      why: dueWords(due, state),
    })),
  })),
  unread: unread.map(({ file, refused }) => ({ file, refused: firstRefusals(refused) })),
})
