import type { AxialAnswer } from '../plan/axialAnswer'
import { axialRow } from '../plan/axialRow'
import { hasMoves } from '../plan/moves'
import type { HandAnswer } from '../studies/hand/handAnswer'
import type { Train } from '../../mechanics/train'
import type { PlanAnswer } from './answer'
import { displayedPlan } from './displayed'

/** The train along its shafts by the moves that people work by: of a plan rounded to shims, those of the rounding. */
export function axialShown(train: Train, answer: PlanAnswer | HandAnswer): AxialAnswer | undefined {
  const shown = answer.status === 'by hand' ? answer : displayedPlan(answer)
  return axialRow(train, hasMoves(shown) ? shown.bodies.map(({ move }) => move) : undefined)
}
