import type { PlanAnswer } from './answer'

/**
 * The plan that people work by, and that every face displays: rounded to the shims of the store where
 * that was done, the least plan elsewhere.
 */
export function displayedPlan(answer: PlanAnswer): PlanAnswer {
  const { rounded } = answer
  if (!rounded?.bodies || !rounded.expected) return answer
  const { bodies, feet, couplings, expected, total, worstShare } = rounded
  return { ...answer, bodies, feet, couplings, expected, worstShare, ...(total && { total }) }
}
