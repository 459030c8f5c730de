import { displayedPlan } from '../engine/fieldwork/displayed'
import type { AxialAnswer } from '../engine/plan/axialAnswer'
import { axialRow } from '../engine/plan/axialRow'
import { hasMoves } from '../engine/plan/moves'
import type { Train } from '../mechanics/train'
import type { DrawnAnswer } from './drawnAnswer'

/** The train along its shafts by the moves that people work by: of a plan rounded to shims, those of the rounding. */
export function axialShown(train: Train, answer: DrawnAnswer): AxialAnswer | undefined {
  const shown = answer.status === 'by hand' ? answer : displayedPlan(answer)
  return axialRow(train, hasMoves(shown) ? shown.bodies.map(({ move }) => move) : undefined)
}
