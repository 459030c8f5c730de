import { judgedStates } from '../mechanics/engaged'
import type { Coupling, Train } from '../mechanics/train'
import { listed } from './names'

/** What stands in the place of a share of tolerance where the clutch of a coupling is open. */
export const notEngaged = 'not engaged'

/** "engaged in running; not engaged, and not judged, in turning gear"; empty of one that is engaged throughout. */
export function engagedSaid(train: Train, coupling: Coupling): string {
  const { disengaged = [] } = coupling
  if (disengaged.length === 0) return ''
  const open = train.states.filter(({ id }) => disengaged.includes(id)).map(({ name }) => name)
  const judged = judgedStates(train, coupling).map(({ state }) => state.name)
  return `engaged in ${listed(judged)}; not engaged, and not judged, in ${listed(open)}`
}
