import { zero } from '../../lp/affine'
import type { Circle, Cut, Program } from '../../lp/program'
import type { ElasticModel } from './elasticModel'

/** A part of a model's members as a program, with the way back from its rows to the members. */
export interface Subproblem {
  readonly model: ElasticModel
  readonly kept: ReadonlySet<number>
  readonly program: Program
  /** Index in `members` of every row of the program's limits. */
  readonly ofRow: readonly number[]
}

/**
 * The program that respects these members alone.
 * @param stay further bodies that make no motion of their own
 * @param kept indices of members
 */
export function subproblemOf(
  model: ElasticModel,
  kept: ReadonlySet<number>,
  stay: readonly number[] = [],
): Subproblem {
  const { program, ofRow, ofCircle, columnsOf } = model
  const still = new Set<number>()
  for (const [member, columns] of columnsOf)
    if (kept.has(member)) for (const column of columns) still.add(column)
  program.columns.forEach(({ meaning }, column) => {
    if (meaning.part === 'motion' && stay.includes(meaning.body)) still.add(column)
  })
  const rows = program.limits.flatMap((row, i) => {
    const member = ofRow[i] ?? NaN
    return kept.has(member) ? [{ row, member }] : []
  })
  return {
    model,
    kept,
    program: {
      ...program,
      columns: program.columns.map((column, c) =>
        still.has(c) ? { ...column, lower: 0, upper: 0 } : column,
      ),
      limits: rows.map(({ row }) => row),
      circles: program.circles.map((circle, c) =>
        kept.has(ofCircle[c] ?? NaN) ? circle : given(circle),
      ),
    },
    ofRow: rows.map(({ member }) => member),
  }
}

/** A circle given up keeps its index, so that tangents of one part are good in another. */
const given = ({ name, slack, meaning }: Circle): Circle => ({
  name,
  u: zero,
  w: zero,
  radius: zero,
  slack,
  meaning,
})

/** The tangents whose circle is still in the program. */
export const cutsIn = (program: Program, cuts: readonly Cut[]): Cut[] =>
  cuts.filter((cut) => {
    const circle = program.circles[cut.circle]
    if (circle === undefined) return false
    return circle.u.terms.size + circle.w.terms.size + circle.radius.terms.size > 0
  })
