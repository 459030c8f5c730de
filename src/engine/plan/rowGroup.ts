import { tol } from '../../mechanics/tolerances'
import type { Train } from '../../mechanics/train'
import type { Affine } from '../lp/affine'
import type { Program } from '../lp/program'
import type { BindingGroup } from './bindingGroups'
import type { CostAnswer } from './solvePlan'

/**
 * A limit of a foot with the same limit of the other feet of its row that the least cost reaches too.
 * Feet of a row rise and slide together, so that more room at one of them alone may give nothing. Room
 * given to all is worth what the duals of all promise.
 * @returns undefined where no other foot of the row is at that limit
 */
export function rowGroup(
  train: Train,
  program: Program,
  { answer: { columns } }: Pick<CostAnswer, 'answer'>,
  group: BindingGroup,
  /** All limits that the cost leans on, this one among them. */
  groups: readonly BindingGroup[],
): BindingGroup | undefined {
  const { meaning, side } = group
  if (!('foot' in meaning) || meaning.fact === 'shim') return undefined
  const row = train.bodies[meaning.body]?.rows.find(({ feet }) => feet.includes(meaning.foot))
  const alike = ({ meaning: other }: { meaning: BindingGroup['meaning'] }): boolean =>
    'foot' in other &&
    other.fact === meaning.fact &&
    other.body === meaning.body &&
    (row?.feet.includes(other.foot) ?? false)
  const value = ({ constant, terms }: Affine) =>
    [...terms].reduce((sum, [column, a]) => sum + a * (columns[column] ?? 0), constant)
  const rows = program.limits.flatMap((limit, i) => {
    if (!alike(limit)) return []
    const at = limit.terms.reduce((sum, [column, a]) => sum + a * (columns[column] ?? 0), 0)
    return Math.abs(at - limit[side]) <= tol.reached ? [i] : []
  })
  const circles = program.circles.flatMap((circle, c) => {
    if (!alike(circle)) return []
    const room = value(circle.radius) - Math.hypot(value(circle.u), value(circle.w))
    return room <= tol.reached ? [c] : []
  })
  const feet = [
    ...rows.map((i) => program.limits[i]?.meaning),
    ...circles.map((c) => program.circles[c]?.meaning),
  ].flatMap((other) => (other && 'foot' in other ? [other.foot] : []))
  const others = [...new Set(feet)].filter((foot) => foot !== meaning.foot)
  if (others.length === 0) return undefined
  const price = groups
    .filter((one) => one.side === side && alike(one))
    .reduce((sum, one) => sum + one.price, 0)
  return { ...group, rows, circles, others, price }
}
