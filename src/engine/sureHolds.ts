import { chanceText } from '../language/chanceText'
import type { Motion } from '../mechanics/motion'
import type { Train } from '../mechanics/train'
import type { HoldRow } from './studies/holds/row'
import { choiceOf } from './studies/holds/choice'
import { holdsFrom, type Holds, type HoldOptions } from './studies/holds/holdRows'
import { HoldSolver } from './studies/holds/holdSolver'
import type { Solver } from './lp/solver'
import { ChanceStudy } from './chance/chanceStudy'
import { chanceOf } from './chance/interval'
import { sureOfPlan } from './chance/sureAnswer'

/** Every choice of held bodies, ranked, each with the chance of its plan by the same draws. */
export function sureHolds(train: Train, solver: Solver, options: HoldOptions = {}): Holds {
  const holds = new HoldSolver(train, solver)
  const study = new ChanceStudy(train, holds.found)
  const asFound = sureOfPlan(study)
  const { complete, rows } = holdsFrom(holds, options)
  return {
    complete,
    rows: rows.map((row) => {
      const motions = motionsOfHold(holds, row)
      return { ...row, sure: motions ? sureOfPlan(study, motions) : asFound }
    }),
  }
}

/** The chance of the plan of a choice as people read it; undefined where it has none. */
export function chanceOfHold(
  holds: HoldSolver,
  study: ChanceStudy,
  row: HoldRow,
): string | undefined {
  const motions = motionsOfHold(holds, row)
  if (!motions) return undefined
  return chanceText(chanceOf(study.good(study.judged(motions)).all, study.draws))
}

function motionsOfHold(holds: HoldSolver, row: HoldRow): readonly Motion[] | undefined {
  if (row.cost === undefined) return undefined
  const { bodies } = holds.train
  const held = new Set(row.held)
  const indices = bodies.flatMap(({ id }, b) => (held.has(id) ? [b] : []))
  return holds.motionsOf(choiceOf(holds.train, new Set(indices)))
}
