import type { LinearProgram, LpColumn, LpRow, Optimal } from '../engine/lp/solver'

/** A program's dual, and the way back from the dual's answer to the program's own. */
export interface DualForm {
  readonly program: LinearProgram
  /** Turns an optimal answer of the dual (minimised with its sign turned) into one of the original. */
  back(answer: Optimal): Optimal
}

/**
 * The dual of min c'x, lower <= Ax <= upper, l <= x <= u, written as a minimisation. The planner's
 * programs have many more rows (tangents) than columns, and the simplex works with a basis as large
 * as the rows are many: in the dual form the same steps cost a tenth.
 *
 * One dual variable stands for each finite side of a row and of a column's bound, and each original
 * column becomes the equation A'y + z = c. A lower bound of 0 turns the equation into A'y <= c.
 */
export function dualForm(primal: LinearProgram): DualForm {
  const columns: LpColumn[] = []
  const objective: number[] = []
  const entries = primal.columns.map((): [number, number][] => [])
  const sides = primal.rows.map((): { column: number; sign: 1 | -1 }[] => [])
  const add = (bound: number, sign: 1 | -1): number => {
    columns.push({ lower: 0, upper: Infinity })
    objective.push(-sign * bound)
    return columns.length - 1
  }
  const addSide = ({ terms }: LpRow, i: number, bound: number, sign: 1 | -1): void => {
    if (!Number.isFinite(bound)) return
    const column = add(bound, sign)
    sides[i]?.push({ column, sign })
    for (const term of terms) entries[term[0]]?.push([column, sign * term[1]])
  }
  primal.rows.forEach((row, i) => {
    addSide(row, i, row.lower, 1)
    addSide(row, i, row.upper, -1)
  })
  const rows: LpRow[] = primal.columns.map(({ lower, upper }, j) => {
    const terms = entries[j] ?? []
    const cost = primal.objective[j] ?? 0
    const slack = lower === 0
    if (!slack && Number.isFinite(lower)) terms.push([add(lower, 1), 1])
    if (Number.isFinite(upper)) terms.push([add(upper, -1), -1])
    return { terms, lower: slack ? -Infinity : cost, upper: cost }
  })
  return {
    program: { columns, rows, objective },
    back: (answer) => ({
      kind: 'optimal',
      objective: -answer.objective,
      // The dual is minimised with its sign turned, so its row duals are -x.
      columns: primal.columns.map((_, j) => -(answer.duals[j] ?? 0)),
      duals: sides.map((list) =>
        list.reduce((sum, { column, sign }) => sum + sign * (answer.columns[column] ?? 0), 0),
      ),
    }),
  }
}
