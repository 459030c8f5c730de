import { tidy } from '../../../language/tidy'
import type { Train } from '../../../mechanics/train'
import { guardedErrors } from '../../../mechanics/uncertainty/judged'
import { keptFrom } from '../../../mechanics/uncertainty/kept'
import { withKept } from '../../lp/rows/keptFree'
import type { Solver } from '../../lp/solver'
import { allLimits } from '../elastic/elasticModel'
import { shareFeasibility } from '../elastic/shareFeasibility'
import { subproblemOf } from '../elastic/subproblem'
import { candidateOf, type Candidate, type RemedyContext } from './candidate'
import { fieldAt } from './change'

/** Guards are told in steps of a tenth of a standard uncertainty. */
const stepsToOne = 10

/**
 * A smaller guard: the largest in whole tenths with which some move keeps every limit; no limit is widened, it is shown
 * less surely.
 * @returns undefined where there is no guard, or none at all would not do either
 */
export function guardChoice(context: RemedyContext, solver: Solver): Candidate | undefined {
  const { train, model } = context
  const { guard, share } = train.plan
  if (guard === 0) return undefined
  const errors = guardedErrors(train)
  const { program } = subproblemOf(model, allLimits(model))
  const does = (steps: number): boolean => {
    const less: Train = { ...train, plan: { ...train.plan, guard: steps / stepsToOne } }
    const other = withKept(program, less, keptFrom(less, errors))
    return shareFeasibility(other, share, [], solver).kind === 'met'
  }
  if (!does(0)) return undefined
  // more guard is never easier
  let [low, high] = [0, Math.ceil(tidy(guard * stepsToOne))]
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2)
    if (does(middle)) low = middle
    else high = middle
  }
  const to = tidy(low / stepsToOne)
  return candidateOf('guard', {
    where: 'guard',
    changes: [{ at: 'plan.guard', from: fieldAt(context.document, 'plan.guard'), to }],
    agree: 'the responsible engineer',
    lead: () =>
      to === 0
        ? `Plan without a guard instead of ${tidy(guard)} standard uncertainties kept free of every limit.`
        : `Keep ${to} standard ${to === 1 ? 'uncertainty' : 'uncertainties'} free of every limit instead of ${tidy(guard)}.`,
  })
}
