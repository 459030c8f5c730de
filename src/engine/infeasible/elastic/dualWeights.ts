import { tol } from '../../../mechanics/tolerances'
import { type Meaning, type Row, shareColumn } from '../../lp/program'
import { towardTangent, pressingRows, type CircleDirection } from '../../lp/duals'
import { keyOf, elasticLimitOf } from './limit'
import type { Subproblem } from './subproblem'
import type { ShareFeasibility } from './shareFeasibility'

/** How hard a member presses in the program that shows a share cannot be met. */
export interface DualWeight {
  /** Sum of its duals; for a held body, of the reduced costs of its motions. */
  readonly weight: number
  /** The row that presses most: its meaning, and the side that it bounds. */
  readonly most?: { readonly meaning: Meaning; readonly side: 'lower' | 'upper'; weight: number }
  /** Mean direction in which a circle is pressed, from u toward w. */
  readonly toward?: CircleDirection
}

/**
 * The members that together keep the share from being met, by weak duality: the limits with a dual,
 * and the held bodies whose motions have a reduced cost.
 */
export function limitWeights(
  part: Subproblem,
  missed: Extract<ShareFeasibility, { kind: 'missed' }>,
): Map<number, DualWeight> {
  const { program, model } = part
  const leans = pressingRows(program, missed.shown, { part: tol.noPressElastic })
  const index = new Map(model.members.map((member, m) => [keyOf(member), m]))
  const press = new Map<number, DualWeight>()
  const reduced = program.columns.map((_, c) => (c === shareColumn ? NaN : 0))
  for (const { row, cut, side, dual, weight } of leans) {
    for (const [column, a] of row.terms) reduced[column] = (reduced[column] ?? 0) - dual * a
    const member = index.get(keyOf(elasticLimitOf(row.meaning, side)))
    if (member === undefined) continue
    const known = added(press.get(member), row, side, weight)
    press.set(member, cut ? { ...known, toward: towardTangent(known.toward, cut, weight) } : known)
  }
  const largest = Math.max(0, ...leans.map(({ weight }) => weight))
  for (const [member, columns] of model.columnsOf) {
    if (!part.kept.has(member)) continue
    const weight = columns.reduce((sum, c) => sum + Math.abs(reduced[c] ?? 0), 0)
    if (weight > tol.noPressElastic * largest) press.set(member, { weight })
  }
  return press
}

function added(
  known: DualWeight | undefined,
  { meaning }: Row,
  side: 'lower' | 'upper',
  weight: number,
): DualWeight {
  const most = known?.most && known.most.weight >= weight ? known.most : { meaning, side, weight }
  return { ...known, weight: (known?.weight ?? 0) + weight, most }
}
