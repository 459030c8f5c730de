import { displayedPlan } from '../engine/fieldwork/displayed'
import { statorsSaid } from '../engine/plan/statorWords'
import type { Train } from '../mechanics/train'
import type { DrawnAnswer } from './drawnAnswer'

/** The stators of a train in sentences, by the moves that people work by: of a plan rounded to shims, those of the rounding. */
export function statorsShown(train: Train, answer: DrawnAnswer): string[] {
  const shown = answer.status === 'by hand' ? answer : displayedPlan(answer)
  return statorsSaid(train, shown.stators ?? [])
}
