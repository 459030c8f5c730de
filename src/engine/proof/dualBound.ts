/** A linear program as the proof needs it: bounds, rows, objective. */
export interface ProgramToBound {
  readonly columns: readonly { readonly lower: number; readonly upper: number }[]
  readonly rows: readonly {
    readonly terms: readonly (readonly [column: number, coefficient: number])[]
    readonly lower: number
    readonly upper: number
  }[]
  readonly objective: readonly number[]
}

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
  const reduced = [...program.objective]
  let bound = 0
  program.rows.forEach((row, i) => {
    const dual = duals[i] ?? 0
    const side = dual > 0 ? row.lower : row.upper
    if (dual === 0 || !Number.isFinite(side)) return
    bound += dual * side
    for (const [column, coefficient] of row.terms)
      reduced[column] = (reduced[column] ?? 0) - dual * coefficient
  })
  program.columns.forEach(({ lower, upper }, j) => {
    const d = reduced[j] ?? 0
    if (d > 0) bound += d * (Number.isFinite(lower) ? lower : -reach)
    else if (d < 0) bound += d * (Number.isFinite(upper) ? upper : reach)
  })
  return bound
}
