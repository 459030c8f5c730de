import { cleanDuals, type ProgramToBound } from './cleanDuals'
import { ExactSum } from './exactSum'

/**
 * A lower bound on the objective from row duals alone, by weak duality: for any y,
 * min c'x >= sum of y_i * (the row's bound on y_i's side) + sum over columns of min (c - A'y)_j x_j.
 * A column without the bound that its reduced cost calls for is taken to stay within `reach`, so
 * that the last digits of a basic column cost digits of the bound and not the bound itself. Added up with twice the digits
 * and rounded down (Neumaier and Shcherbina, "Safe bounds in linear and mixed-integer linear programming", 2004), so that no
 * answer of the program as it stands is under it, not by a last digit either.
 * @returns the bound, in the objective's unit
 */
export function dualBound(
  program: ProgramToBound,
  duals: readonly number[],
  reach: number,
): number {
  const y = cleanDuals(program, duals)
  const bound = new ExactSum()
  const reduced = program.objective.map((cost) => {
    const sum = new ExactSum()
    sum.add(cost, 1)
    return sum
  })
  program.rows.forEach((row, i) => {
    const dual = y[i] ?? 0
    if (dual === 0) return
    bound.add(dual, dual > 0 ? row.lower : row.upper)
    for (const [column, coefficient] of row.terms) reduced[column]?.add(-dual, coefficient)
  })
  reduced.forEach((cost, j) => {
    const { lower, upper } = program.columns[j] ?? { lower: 0, upper: 0 }
    if (cost.sign > 0) bound.addSum(cost, Number.isFinite(lower) ? lower : -reach)
    if (cost.sign < 0) bound.addSum(cost, Number.isFinite(upper) ? upper : reach)
  })
  return bound.roundedDown()
}
