import type { Train } from '../../mechanics/train'
import { choiceOf } from '../studies/holds/choice'
import { holdsFrom, type Holds, type HoldOptions, type RankedHold } from '../studies/holds/holdRows'
import { HoldSolver } from '../studies/holds/holdSolver'
import type { Solver } from '../lp/solver'
import type { SureAnswer } from './answer'
import { ChanceStudy } from './chanceStudy'
import { sureOfPlan } from './sureAnswer'

/** A choice with how sure its plan is; without what would buy more, which the answer of `plan` has. */
export type SureHold = RankedHold & { readonly sure: SureAnswer }

/** Every choice of held bodies, ranked, each with the chance of its plan by the same draws. */
export function sureHolds(
  train: Train,
  solver: Solver,
  options: HoldOptions = {},
): Holds & { readonly rows: readonly SureHold[] } {
  const holds = new HoldSolver(train, solver)
  const study = new ChanceStudy(train, holds.found)
  const asFound = sureOfPlan(study)
  const { complete, rows } = holdsFrom(holds, options)
  return {
    complete,
    rows: rows.map((row): SureHold => {
      const held = new Set(row.held)
      const bodies = train.bodies.flatMap(({ id }, b) => (held.has(id) ? [b] : []))
      const motions =
        row.cost === undefined ? undefined : holds.motionsOf(choiceOf(train, new Set(bodies)))
      return { ...row, sure: motions ? sureOfPlan(study, motions) : asFound }
    }),
  }
}
