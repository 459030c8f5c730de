import { tangentRow } from './cuts'
import type { Cut, Program, Row } from './program'
import type { RoundsOptimal } from './rounds'

/** A limit, or a tangent of a circle, that an answer leans on. */
export interface PressingRow {
  readonly row: Row
  /** Index in the program's limits; undefined for a tangent. */
  readonly limit?: number
  /** The tangent; undefined for a limit. */
  readonly cut?: Cut
  readonly side: 'lower' | 'upper'
  /** What the objective changes by for a program unit more on the row's bound: + at a lower one. */
  readonly dual: number
  /** Its size. */
  readonly weight: number
}

/**
 * Limits and tangents with a dual, in the order of the rows of the answer's program: its limits, then
 * the tangents it was asked with. A dual toward a side without a bound is the solver's rounding.
 * @param cutOff no dual below `least` counts (objective a program unit), none below `part` of the largest
 */
export function pressingRows(
  program: Program,
  { answer: { duals }, asked }: Pick<RoundsOptimal, 'answer' | 'asked'>,
  cutOff: { readonly least?: number; readonly part?: number },
): PressingRow[] {
  const tangents = asked
    .map((cut) => ({ row: tangentRow(program, cut), cut }))
    .filter(({ row }) => row.terms.length > 0)
  const rows = [...program.limits.map((row, limit) => ({ row, limit })), ...tangents]
  const largest = rows.reduce((most, _, i) => Math.max(most, Math.abs(duals[i] ?? 0)), 0)
  const least = Math.max(cutOff.least ?? 0, (cutOff.part ?? 0) * largest)
  return rows.flatMap((one, i): PressingRow[] => {
    const dual = duals[i] ?? 0
    const weight = Math.abs(dual)
    const side = dual > 0 ? 'lower' : 'upper'
    if (weight <= least || !Number.isFinite(one.row[side])) return []
    return [{ ...one, side, dual, weight }]
  })
}

/** A direction in the plane of a circle, from u toward w; its length is the weight behind it. */
export interface CircleDirection {
  readonly u: number
  readonly w: number
}

/** The direction in which a circle is pressed, with one tangent more, of so much weight (its dual). */
export const towardTangent = (
  toward: CircleDirection | undefined,
  { angle }: Cut,
  weight: number,
): CircleDirection => ({
  u: (toward?.u ?? 0) + weight * Math.cos(angle),
  w: (toward?.w ?? 0) + weight * Math.sin(angle),
})
