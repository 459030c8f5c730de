import type { TrainDocument } from '../document/schema'
import { tol } from '../mechanics/tolerances'
import type { AsFound } from '../mechanics/readings/asFound'
import type { Train } from '../mechanics/train'
import type { ReasonsAnswer, UnfinishedReason } from './fieldwork/answer'
import type { Conflict } from './infeasible/conflict/answer'
import { conflictsOf, contradictionOf } from './infeasible/conflict/conflict'
import { RemedySearch } from './infeasible/remedies/remedies'
import { Budget } from './lp/budget'
import type { Solver } from './lp/solver'

/**
 * Why an impossible train is impossible, and what would help, each within a budget of work: conflicts and remedies that
 * were worked out whole are told, whatever came after them.
 * @param floor the smallest worst share that the train reaches as it is
 * @param work how many times the usual work
 */
export function reasonsOf(
  document: TrainDocument,
  train: Train,
  found: readonly AsFound[],
  floor: number | null,
  solver: Solver,
  work: number,
): ReasonsAnswer {
  const unfinished: UnfinishedReason[] = []
  const conflicts: Conflict[] = []
  const budget = new Budget(solver, work * tol.reasonsWork)
  const contradiction = budget.attempt((within) => contradictionOf(train, found, within))
  const all =
    contradiction &&
    budget.attempt((within) => conflictsOf(contradiction, within, undefined, conflicts))
  if (!all) unfinished.push('conflict')
  // the contradiction remembers the solver of this budget
  budget.allow(work * tol.reasonsWork)
  const search = contradiction && new RemedySearch(document, contradiction, floor, budget.solver)
  if (!search || !budget.attempt(() => search.run())) unfinished.push('remedies')
  const told = search?.told() ?? { remedies: [], holdsTried: { tried: 0, solve: 0 } }
  return { conflicts, ...told, ...(unfinished.length > 0 && { unfinished }) }
}
