import { tol } from '../../../mechanics/tolerances'
import type { Solver } from '../../lp/solver'
import { keyOf } from '../elastic/limit'
import { withRelaxations } from '../elastic/relaxation'
import { shareFeasibility } from '../elastic/shareFeasibility'
import { subproblemOf } from '../elastic/subproblem'
import { checkOf, limitsOf, type ToleranceCheck, type More } from './more'
import { relaxationOf, missingAt } from './missing'
import type { FeasibilityCache } from './shrink'

/**
 * The least part of itself by which a coupling's tolerance must be larger for the rest of a set to be
 * kept, and which of its checks must: an offset may press where the gap has to give as well.
 * @param group the coupling in the states in which it gives, indices of members
 * @returns undefined where the solver stopped
 */
export function toleranceRaise(
  cache: FeasibilityCache,
  set: ReadonlySet<number>,
  group: readonly number[],
  solver: Solver,
): More | undefined {
  const { members, train } = cache.model
  const share = missingAt(cache, set, group, solver)
  const first = members[group[0] ?? NaN]
  if (share === undefined || first?.kind !== 'coupling') return undefined
  // Allowed is a share of the limit: for so much more of it the limit must be raised by more.
  const amount = (share / cache.share) * (1 + tol.aloneRoom)
  const keys = new Set(group.flatMap((index) => members[index] ?? []).map(keyOf))
  const { program } = subproblemOf(cache.model, set)
  const does = (checks: ReadonlySet<ToleranceCheck>): boolean => {
    const give = relaxationOf(keys, 1, (meaning) =>
      meaning.fact === 'tolerance' ? checks.has(checkOf(meaning.what)) : false,
    )
    const value = amount * cache.share
    const raised = withRelaxations(program, [{ ...give, least: value, most: value }])
    return shareFeasibility(raised, cache.share, [], solver).kind === 'met'
  }
  const limits = limitsOf(train.couplings[first.coupling])
  const needed = new Set(limits.keys())
  for (const check of limits.keys()) {
    if (needed.size === 1) break
    const fewer = new Set([...needed].filter((other) => other !== check))
    if (does(fewer)) needed.delete(check)
  }
  return { amount, checks: [...needed] }
}
