import { solveSymmetric } from '../../mechanics/symmetric'
import { tol } from '../../mechanics/tolerances'

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

/** Corrections after which the last digits of the duals no longer change. */
const turns = 3
/**
 * Takes the solver's rounding off row duals, so that a bound from them keeps its digits. Duals on a
 * side that is not bounded are dropped; the others are changed, each in proportion to its size, by
 * the least that makes the reduced costs vanish where a column has no bound to rest on. Where a column stands but by a hair in
 * the rows that have duals, that would take the duals themselves: rows without one then lend it theirs.
 * Any result is valid for a bound; this one is merely sharper.
 * @param duals objective a unit of the row
 */
export function cleanDuals(program: ProgramToBound, duals: readonly number[]): number[] {
  let y = duals.map((dual, i) => admissible(program, i, dual))
  for (let turn = 0; turn < turns; turn++) {
    const reduced = reducedCosts(program, y)
    const loose = program.columns.flatMap(({ lower, upper }, j) => {
      const d = reduced[j] ?? 0
      return (d > 0 && !Number.isFinite(lower)) || (d < 0 && !Number.isFinite(upper)) ? [j] : []
    })
    if (loose.length === 0) return y
    const change = correction(program, y.map(Math.abs), loose, reduced)
    const least = tol.dualLent * y.reduce((most, dual) => Math.max(most, Math.abs(dual)), 0)
    const takes = change.some((by, i) => {
      const dual = Math.abs(y[i] ?? 0)
      return dual > least && Math.abs(by) > tol.dualTaken * dual
    })
    y = takes ? lent(program, y, least, loose, reduced) : changed(program, y, change)
  }
  return y
}

const changed = (
  program: ProgramToBound,
  y: readonly number[],
  change: readonly number[],
): number[] => y.map((dual, i) => admissible(program, i, dual + (change[i] ?? 0)))

/**
 * Duals changed likewise, with a little weight on every row more, but for those that could only help from their open side.
 * @param least that weight, in the unit of the duals
 */
function lent(
  program: ProgramToBound,
  y: readonly number[],
  least: number,
  loose: readonly number[],
  reduced: readonly number[],
): number[] {
  const weights = y.map((dual) => Math.abs(dual) + least)
  const first = correction(program, weights, loose, reduced)
  const closed = weights.map((weight, i) =>
    y[i] === 0 && admissible(program, i, first[i] ?? 0) === 0 ? 0 : weight,
  )
  return changed(program, y, correction(program, closed, loose, reduced))
}

/** A dual that its row can carry: none toward a side without a bound. */
function admissible(program: ProgramToBound, row: number, dual: number): number {
  const side = dual > 0 ? program.rows[row]?.lower : program.rows[row]?.upper
  return side !== undefined && Number.isFinite(side) ? dual : 0
}

/** c - A'y: what is left of each column's cost (objective a unit of the column). */
export function reducedCosts(program: ProgramToBound, y: readonly number[]): number[] {
  const reduced = [...program.objective]
  program.rows.forEach((row, i) => {
    const dual = y[i] ?? 0
    if (dual === 0) return
    for (const [column, coefficient] of row.terms)
      reduced[column] = (reduced[column] ?? 0) - dual * coefficient
  })
  return reduced
}

/** Least change (each weighted by 1/weight, none without one) of the duals that cancels the reduced costs of `loose` columns. */
function correction(
  program: ProgramToBound,
  weights: readonly number[],
  loose: readonly number[],
  reduced: readonly number[],
): number[] {
  const place = new Map(loose.map((column, k) => [column, k]))
  const n = loose.length
  const gram = Array.from({ length: n }, () => new Array<number>(n).fill(0))
  const parts = program.rows.map((row, i) =>
    weights[i] === 0
      ? []
      : row.terms.flatMap(([column, a]) => {
          const k = place.get(column)
          return k === undefined ? [] : [[k, a] as const]
        }),
  )
  parts.forEach((part, i) => {
    const weight = weights[i] ?? 0
    for (const [k, a] of part)
      for (const [l, b] of part) {
        const line = gram[k]
        if (line) line[l] = (line[l] ?? 0) + weight * a * b
      }
  })
  const multipliers = solveSymmetric(
    gram,
    loose.map((column) => reduced[column] ?? 0),
  )
  return parts.map((part, i) => {
    const sum = part.reduce((s, [k, a]) => s + a * (multipliers[k] ?? 0), 0)
    return (weights[i] ?? 0) * sum
  })
}
