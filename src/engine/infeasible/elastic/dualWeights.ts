import { tol } from '../../../mechanics/tolerances'
import { type Meaning, type Row, shareColumn } from '../../lp/program'
import { stageRows } from '../../lp/stage'
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
  readonly toward?: { readonly u: number; readonly w: number }
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
  const { duals } = missed.shown
  const rows = stageRows(program, { ask: 'floor' }, missed.cuts)
  const largest = Math.max(...rows.map((_, i) => Math.abs(duals[i] ?? 0)))
  const index = new Map(universe.members.map((member, m) => [keyOf(member), m]))
  const press = new Map<number, Press>()
  const reduced = program.columns.map((_, c) => (c === shareColumn ? NaN : 0))
  rows.forEach((row, i) => {
    const dual = duals[i] ?? 0
    if (Math.abs(dual) <= tol.noPressElastic * largest) return
    for (const [column, a] of row.terms) reduced[column] = (reduced[column] ?? 0) - dual * a
    const side = Number.isFinite(row.upper) ? 'upper' : 'lower'
    const member = index.get(keyOf(memberOf(row.meaning, side)))
    if (member === undefined) return
    press.set(member, added(press.get(member), row, side, dual))
  })
  // Tangents carry no angle as rows; the direction is that of their weights on the circle's columns.
  missed.cuts.forEach((cut, k) => {
    const row = program.limits.length + k
    const weight = Math.abs(duals[row] ?? 0)
    const member = universe.ofCircle[cut.circle]
    const known = member === undefined ? undefined : press.get(member)
    if (member === undefined || !known || weight <= tol.noPressElastic * largest) return
    const { u, w } = known.toward ?? { u: 0, w: 0 }
    press.set(member, {
      ...known,
      toward: { u: u + weight * Math.cos(cut.angle), w: w + weight * Math.sin(cut.angle) },
    })
  })
  for (const [member, columns] of universe.columnsOf) {
    if (!part.kept.has(member)) continue
    const weight = columns.reduce((sum, c) => sum + Math.abs(reduced[c] ?? 0), 0)
    if (weight > tol.noPressElastic * largest) press.set(member, { weight })
  }
  return press
}

function added(known: Press | undefined, row: Row, side: 'lower' | 'upper', dual: number): Press {
  const weight = Math.abs(dual)
  const most =
    known?.most && known.most.weight >= weight ? known.most : { meaning: row.meaning, side, weight }
  return { ...known, weight: (known?.weight ?? 0) + weight, most }
}
