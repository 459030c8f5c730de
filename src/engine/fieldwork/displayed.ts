import type { PlanAnswer, PlannedWithStages } from './answer'
import { sentenceOf, type Sentence } from '../plan/sentence'
import type { Train } from '../../mechanics/train'
import { madeOf } from '../rounding/answer'

/**
 * The plan that people work by, and that every face displays: rounded to the shims of the store where
 * that was done, the least plan elsewhere.
 */
export function displayedPlan(answer: PlannedWithStages): PlannedWithStages
export function displayedPlan(answer: PlanAnswer): PlanAnswer
export function displayedPlan(answer: PlanAnswer): PlanAnswer {
  const rounded = answer.status === 'planned' ? madeOf(answer.rounded) : undefined
  if (answer.status !== 'planned' || !rounded) return answer
  const { bodies, feet, couplings, expected, total, worstShare, stators } = rounded
  return {
    ...answer,
    ...{ bodies, feet, couplings, expected, worstShare, total },
    ...(stators && { stators }),
  }
}

/** What a plan means, by the moves that are worked by; proven is the least move, before rounding. */
export const workedSentence = (train: Train, plan: PlanAnswer): Sentence => ({
  ...sentenceOf(train, displayedPlan(plan)),
  proof: sentenceOf(train, plan).proof,
})
