import { cleanDuals, reducedCosts, type ProgramToBound } from './cleanDuals'

/**
 * A lower bound on the objective from row duals alone, by weak duality: for any y,
 * min c'x >= sum of y_i * (the row's bound on y_i's side) + sum over columns of min (c - A'y)_j x_j.
 * A column without the bound that its reduced cost calls for is taken to stay within `reach`, so
 * that the last digits of a basic column cost digits of the bound and not the bound itself.
 * @returns the bound, in the objective's unit
 */
export function dualBound(
  program: ProgramToBound,
  duals: readonly number[],
  reach: number,
): number {
  const y = cleanDuals(program, duals)
  const onRows = program.rows.reduce((sum, row, i) => {
    const dual = y[i] ?? 0
    return dual === 0 ? sum : sum + dual * (dual > 0 ? row.lower : row.upper)
  }, 0)
  return reducedCosts(program, y).reduce((sum, d, j) => {
    const { lower, upper } = program.columns[j] ?? { lower: 0, upper: 0 }
    if (d > 0) return sum + d * (Number.isFinite(lower) ? lower : -reach)
    if (d < 0) return sum + d * (Number.isFinite(upper) ? upper : reach)
    return sum
  }, onRows)
}
