import type { Train } from '../../../mechanics/train'
import type { Solver } from '../../lp/solver'
import { allLimits, elasticModelOf } from '../elastic/elasticModel'
import { shareFeasibility } from '../elastic/shareFeasibility'
import { subproblemOf } from '../elastic/subproblem'
import type { FeasibilityCache } from './shrink'

/** Whether a changed train, read alike, has a plan within the same share: it is solved again, whole. */
export function planExists(train: Train, cache: FeasibilityCache, solver: Solver): boolean {
  const model = elasticModelOf(train, cache.model.found)
  const { program } = subproblemOf(model, allLimits(model))
  return shareFeasibility(program, cache.share, [], solver).kind === 'met'
}
