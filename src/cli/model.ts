import { fineSign, toFine } from '../mechanics/units'
import { shareText } from '../language/amounts'
import { finalProgram } from '../engine/plan/finalProgram'
import { tidy } from '../language/tidy'
import { exportLp } from '../engine/lp/exportLp'
import { exportMps } from '../engine/lp/exportMps'
import { exportProgram } from '../engine/lp/exportProgram'
import type { PlanRun } from '../engine/plan/planRun'

/** The program behind a plan as text, and what another solver should find. */
export type Model =
  | {
      readonly status: 'planned' | 'in-tolerance' | 'impossible'
      readonly text: string
      readonly columns: number
      readonly rows: number
      /** The optimum in the document's fine unit; null where there is none. */
      readonly bound: number | null
      readonly says: string
    }
  | { readonly status: 'stopped'; readonly why: string }

export function modelOf(run: PlanRun, format: 'lp' | 'mps'): Model {
  const { train } = run
  const final = finalProgram(run)
  if (final.status === 'stopped') return final
  const exported = exportProgram(train, final.program, final.stage, final.cuts)
  const bound = final.bound === undefined ? null : tidy(toFine(final.bound, train.units))
  return {
    status: final.status,
    text: format === 'lp' ? exportLp(exported) : exportMps(exported),
    columns: exported.columns.length,
    rows: exported.groups.reduce((sum, { rows }) => sum + rows.length, 0),
    bound,
    says:
      bound === null
        ? `It has no solution within ${shareText(train.plan.share)} of tolerance: a solver should call it infeasible.`
        : `Its optimum should come out as ${bound} ${fineSign[train.units.fine]}.`,
  }
}
