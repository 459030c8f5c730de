import { tol } from '../../mechanics/tolerances'
import type { LinearProgram, Optimal } from './solver'

/** How far an answer that claims to be optimal is from being one, judged on the program as given. */
export interface Soundness {
  /** Most that a row or a column's bound is passed by, as a part of 1 or of the bound, if larger. */
  readonly violation: number
  /** Difference between the point's objective and the one its duals allow, likewise. */
  readonly gap: number
  /**
   * Largest dual or reduced cost toward a side that has no bound, as a part of the largest cost (or
   * of 1, if larger). Such a one proves nothing: the objective could still come down that way.
   */
  readonly stray: number
}

/** Recomputes rows, bounds, reduced costs and both objectives; the solver's own report is not believed. */
export function soundnessOf(program: LinearProgram, answer: Optimal): Soundness {
  let violation = 0
  let stray = 0
  /** What a dual says the objective is owed by a side; where there is none, by the value itself. */
  const owed = (dual: number, value: number, lower: number, upper: number): number => {
    const side = dual > 0 ? lower : upper
    if (Number.isFinite(side)) return dual * side
    stray = Math.max(stray, Math.abs(dual))
    return dual * value
  }
  const outside = (value: number, lower: number, upper: number) => {
    const by = Math.max(lower - value, value - upper)
    const bound = value < lower ? lower : upper
    if (by > 0) violation = Math.max(violation, by / Math.max(1, Math.abs(bound)))
    else if (Number.isNaN(by)) violation = NaN
  }
  const reduced = [...program.objective]
  let dualObjective = 0
  program.rows.forEach((row, i) => {
    let sum = 0
    const dual = answer.duals[i] ?? NaN
    const { terms } = row
    // by number: this is asked of every row of every answer, and pairs taken apart cost twice as much
    for (let t = 0; t < terms.length; t++) {
      const term = terms[t]
      if (!term) continue
      const column = term[0]
      sum += term[1] * (answer.columns[column] ?? NaN)
      if (dual !== 0) reduced[column] = (reduced[column] ?? 0) - dual * term[1]
    }
    outside(sum, row.lower, row.upper)
    dualObjective += owed(dual, sum, row.lower, row.upper)
  })
  let objective = 0
  program.columns.forEach(({ lower, upper }, j) => {
    const value = answer.columns[j] ?? NaN
    outside(value, lower, upper)
    objective += (program.objective[j] ?? 0) * value
    dualObjective += owed(reduced[j] ?? 0, value, lower, upper)
  })
  return {
    violation,
    gap: Math.abs(objective - dualObjective) / Math.max(1, Math.abs(objective)),
    stray: stray / program.objective.reduce((most, cost) => Math.max(most, Math.abs(cost)), 1),
  }
}

/**
 * An answer within these is as good as the simplex gives in double precision on programs of this
 * kind: a violation of 1e-6 program units is a hundred times under what a plan may pass a limit by.
 */
export const isSound = ({ violation, gap, stray }: Soundness): boolean =>
  violation <= tol.passed && gap <= tol.duality && stray <= tol.stray
