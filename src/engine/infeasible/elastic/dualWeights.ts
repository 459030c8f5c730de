import { tol } from '../../../mechanics/tolerances'
import { type Meaning, type Row, shareColumn } from '../../lp/program'
import { leaned, pressing, type Lean } from '../../lp/duals'
import { keyOf, memberOf } from './limit'
import type { Part } from './subproblem'
import type { Reach } from './shareFeasibility'

/** How hard a member presses in the program that shows a share cannot be met. */
export interface Press {
  /** Sum of its duals; for a held body, of the reduced costs of its motions. */
  readonly weight: number
  /** The row that presses most: its meaning, and the side that it bounds. */
  readonly most?: { readonly meaning: Meaning; readonly side: 'lower' | 'upper'; weight: number }
  /** Mean direction in which a circle is pressed, from u toward w. */
  readonly toward?: Lean
}

/**
 * The members that together keep the share from being met, by weak duality: the limits with a dual,
 * and the held bodies whose motions have a reduced cost.
 */
export function pressOf(
  part: Part,
  missed: Extract<Reach, { kind: 'missed' }>,
): Map<number, Press> {
  const { program, universe } = part
  const leans = pressing(program, missed.shown, { part: tol.noPressElastic })
  const index = new Map(universe.members.map((member, m) => [keyOf(member), m]))
  const press = new Map<number, Press>()
  const reduced = program.columns.map((_, c) => (c === shareColumn ? NaN : 0))
  for (const { row, cut, side, dual, weight } of leans) {
    for (const [column, a] of row.terms) reduced[column] = (reduced[column] ?? 0) - dual * a
    const member = index.get(keyOf(memberOf(row.meaning, side)))
    if (member === undefined) continue
    const known = added(press.get(member), row, side, weight)
    press.set(member, cut ? { ...known, toward: leaned(known.toward, cut, weight) } : known)
  }
  const largest = Math.max(0, ...leans.map(({ weight }) => weight))
  for (const [member, columns] of universe.columnsOf) {
    if (!part.kept.has(member)) continue
    const weight = columns.reduce((sum, c) => sum + Math.abs(reduced[c] ?? 0), 0)
    if (weight > tol.noPressElastic * largest) press.set(member, { weight })
  }
  return press
}

function added(
  known: Press | undefined,
  { meaning }: Row,
  side: 'lower' | 'upper',
  weight: number,
): Press {
  const most = known?.most && known.most.weight >= weight ? known.most : { meaning, side, weight }
  return { ...known, weight: (known?.weight ?? 0) + weight, most }
}
