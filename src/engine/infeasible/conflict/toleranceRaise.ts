import { tol } from '../../../mechanics/tolerances'
import type { Solver } from '../../lp/solver'
import { keyOf } from '../elastic/limit'
import { withGives } from '../elastic/relaxation'
import { reachOf } from '../elastic/shareFeasibility'
import { partOf } from '../elastic/subproblem'
import { checkOf, limitsOf, type Check, type More } from './more'
import { giveOf, missingAt } from './missing'
import type { Asker } from './shrink'

/**
 * The least part of itself by which a coupling's tolerance must be larger for the rest of a set to be
 * kept, and which of its checks must: an offset may press where the gap has to give as well.
 * @param group the coupling in the states in which it gives, indices of members
 * @returns undefined where the solver stopped
 */
export function toleranceRaise(
  asker: Asker,
  set: ReadonlySet<number>,
  group: readonly number[],
  solver: Solver,
): More | undefined {
  const { members, train } = asker.universe
  const share = missingAt(asker, set, group, solver)
  const first = members[group[0] ?? NaN]
  if (share === undefined || first?.kind !== 'coupling') return undefined
  // Allowed is a share of the limit: for so much more of it the limit must be raised by more.
  const amount = (share / asker.share) * (1 + tol.aloneRoom)
  const keys = new Set(group.flatMap((index) => members[index] ?? []).map(keyOf))
  const { program } = partOf(asker.universe, set)
  const does = (checks: ReadonlySet<Check>): boolean => {
    const give = giveOf(keys, 1, (meaning) =>
      meaning.fact === 'tolerance' ? checks.has(checkOf(meaning.what)) : false,
    )
    const value = amount * asker.share
    const raised = withGives(program, [{ ...give, least: value, most: value }])
    return reachOf(raised, asker.share, [], solver).kind === 'met'
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
