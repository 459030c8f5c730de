import { tol } from '../../../mechanics/tolerances'
import { withRelaxations, leastRelaxation, type Relaxation } from '../elastic/relaxation'
import { subproblemOf } from '../elastic/subproblem'
import { floorOf, shareFeasibility } from '../elastic/shareFeasibility'
import { allLimits } from '../elastic/elasticModel'
import type { Solver } from '../../lp/solver'
import type { Cut } from '../../lp/program'
import type { Candidate, RemedyContext, Sized } from './candidate'

/** What a candidate comes to: amounts in whole steps, or the share that even all of it leaves. */
export type Needed =
  | { readonly kind: 'enough'; readonly values: readonly number[] }
  | { readonly kind: 'not enough'; readonly floor: number | undefined }
  | { readonly kind: 'stopped' }

/** Most steps that are taken back one by one. */
const mostTrims = 200

/**
 * The least amounts, in whole steps, with which a candidate lets every coupling keep within the share
 * asked for: an elastic program finds them, they are rounded up, and every one is taken back step by
 * step while the rest still does.
 */
export function amountsOf(
  context: RemedyContext,
  candidate: Candidate,
  cuts: readonly Cut[],
  solver: Solver,
  told: boolean,
): Needed {
  const { model, train } = context
  const { share } = train.plan
  const kept = new Set(allLimits(model))
  for (const member of candidate.drops) kept.delete(member)
  const { program } = subproblemOf(model, kept, candidate.stays)
  const gives = candidate.sized.map(({ give }) => give)
  const open = withRelaxations(program, [...gives, ...candidate.fixed])
  const first = shareFeasibility(open, share, cuts, solver)
  if (first.kind === 'stopped') return { kind: 'stopped' }
  if (first.kind === 'missed')
    return { kind: 'not enough', floor: told ? floorOf(open, first.cuts, solver) : undefined }
  if (gives.length === 0) return { kind: 'enough', values: [] }
  const exact = leastRelaxation(open, [...gives, ...candidate.fixed], share, first.cuts, solver)
  if (exact === undefined) return { kind: 'stopped' }
  const does = (values: readonly number[]) => {
    const set = gives.map((give, g): Relaxation => {
      const value = values[g] ?? 0
      return { ...give, least: value, most: value }
    })
    const fixed = withRelaxations(program, [...set, ...candidate.fixed])
    return shareFeasibility(fixed, share, first.cuts, solver).kind === 'met'
  }
  const rounded = candidate.sized.map((one, g) =>
    Math.min(one.give.most, inSteps(one, stepsFor(one, exact[g] ?? 0))),
  )
  if (!does(rounded)) return elsewhere(candidate, exact, does)
  return { kind: 'enough', values: trimmed(candidate, rounded, does) }
}

/** Whole steps that are at least this much of a give; what is nothing but rounding needs none. */
const stepsFor = ({ step, before = 0 }: Sized, value: number): number =>
  value < tol.giveStep * step ? 0 : Math.ceil((value + before) / step - tol.giveStep)

const inSteps = ({ step, before = 0 }: Sized, steps: number): number =>
  Math.max(0, steps * step - before)

function trimmed(
  { sized }: Candidate,
  start: readonly number[],
  does: (values: readonly number[]) => boolean,
): number[] {
  const values = [...start]
  let trims = 0
  const order = sized.map((_, g) => g).sort((a, b) => (values[a] ?? 0) - (values[b] ?? 0) || a - b)
  for (const g of order) {
    const one = sized[g]
    while (one && (values[g] ?? 0) > 0 && trims++ < mostTrims) {
      const fewer = inSteps(one, stepsFor(one, values[g] ?? 0) - 1)
      const tried = values.map((value, i) => (i === g ? fewer : value))
      if (!does(tried)) break
      values[g] = fewer
    }
  }
  return values
}

/**
 * A hair's breadth rounds to no step at all: then a step more does. Where more is not always better (plates, bolts
 * re-centred): a step less, or exactly.
 */
function elsewhere(
  candidate: Candidate,
  exact: readonly number[],
  does: (values: readonly number[]) => boolean,
): Needed {
  const { sized } = candidate
  const more = sized.map((one, g) => {
    const value = exact[g] ?? 0
    return value > 0 ? Math.min(one.give.most, inSteps(one, stepsFor(one, value) + 1)) : 0
  })
  if (does(more)) return { kind: 'enough', values: trimmed(candidate, more, does) }
  const less = sized.map((one, g) => inSteps(one, stepsFor(one, exact[g] ?? 0) - 1))
  if (does(less)) return { kind: 'enough', values: less }
  return does(exact) ? { kind: 'enough', values: exact } : { kind: 'not enough', floor: undefined }
}
