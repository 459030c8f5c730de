import { reach } from '../lp/program'
import type { LinearProgram } from '../lp/solver'

/**
 * The better of two bounds from the same duals: those with the solver's rounding taken off, and those
 * as they are, which are sharper where shims that are fixed make rows depend on each other. Rows
 * without a dual count as not binding.
 */
export function sharpest(
  program: LinearProgram,
  duals: readonly number[],
  cleaned: number,
): number {
  const reduced = [...program.objective]
  let bound = 0
  program.rows.forEach((row, i) => {
    const given = duals[i] ?? 0
    const side = given > 0 ? row.lower : row.upper
    if (given === 0 || !Number.isFinite(side)) return
    bound += given * side
    for (const [column, coefficient] of row.terms)
      reduced[column] = (reduced[column] ?? 0) - given * coefficient
  })
  reduced.forEach((cost, j) => {
    const { lower, upper } = program.columns[j] ?? { lower: 0, upper: 0 }
    if (cost > 0) bound += cost * Math.max(lower, -reach)
    if (cost < 0) bound += cost * Math.min(upper, reach)
  })
  return Math.max(bound, cleaned)
}
