import type { PlanStatus } from '../engine/plan/answer'

/** Exit status of every status a plan can have. */
export const exitOf: Record<PlanStatus, number> = {
  planned: 0,
  'in-tolerance': 0,
  impossible: 1,
  unproven: 3,
  stopped: 3,
}

/** Exit status where a file, a line or the arguments were refused. */
export const refusedExit = 2

/** Exit status where the answer reached nobody. */
export const answerLost = 3

/**
 * Exit status of many trains, from those of each: the worst that kept a train from its answer, so 2 or 3. That a train
 * cannot be aligned is an answer among many, as good as any other.
 */
export const exitOfMany = (worst: number, one: number): number =>
  one === exitOf.impossible ? worst : Math.max(worst, one)
