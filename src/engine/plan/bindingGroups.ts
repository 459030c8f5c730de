import { tol } from '../../mechanics/tolerances'
import { isAxial } from '../../mechanics/axial'
import type { Train } from '../../mechanics/train'
import { toothMeshes } from '../../mechanics/misalignment/gearTeeth'
import { checksOf } from '../../mechanics/misalignment/check'
import { programUnit, type Meaning, type Program } from '../lp/program'
import { towardTangent, pressingRows, type CircleDirection } from '../lp/duals'
import type { Loosened } from '../lp/relax'
import type { BindingAnswer } from './answer'
import type { CostAnswer } from './solvePlan'

/** A limit that the least cost leans on, with what its duals say one unit of room would save. */
export interface BindingGroup extends Loosened {
  readonly meaning: Meaning
  /** Cost saved per program unit of room; holds for a first small step at most. */
  readonly price: number
  /** Room (program units) that one engine unit of the limit gives: um, mrad or mm. */
  readonly perUnit: number
  readonly quantity: BindingAnswer['quantity']
  /** Feet of its row that are at the same limit and give with it: it gives nothing alone. */
  readonly others?: readonly number[]
  /** Mean direction in which a circle is pressed, from u toward w. */
  readonly toward?: CircleDirection
}

/** Collects the duals of the least-cost program by the physical limit they belong to. */
export function bindingGroups(train: Train, program: Program, least: CostAnswer): BindingGroup[] {
  const groups: BindingGroup[] = []
  const circles = new Map<number, { price: number; toward: CircleDirection }>()
  for (const { row, limit, cut, side, weight } of pressingRows(program, least, {
    least: tol.noPress,
  })) {
    if (cut) {
      const known = circles.get(cut.circle)
      circles.set(cut.circle, {
        price: (known?.price ?? 0) + weight,
        toward: towardTangent(known?.toward, cut, weight),
      })
    }
    if (limit === undefined) continue
    groups.push({
      meaning: row.meaning,
      rows: [limit],
      circles: [],
      side,
      price: weight,
      ...sizeOf(train, row.meaning, least.share),
    })
  }
  for (const [circle, { price, toward }] of circles) {
    const meaning = program.circles[circle]?.meaning
    if (!meaning) continue
    groups.push({
      meaning,
      rows: [],
      circles: [circle],
      side: 'upper',
      price,
      toward,
      ...sizeOf(train, meaning, least.share),
    })
  }
  return groups
}

/** What one unit of a limit is worth in room. */
function sizeOf(
  train: Train,
  meaning: Meaning,
  share: number,
): Pick<BindingGroup, 'perUnit' | 'quantity'> {
  if (meaning.fact === 'tilt') {
    const { feet, x0 } = train.bodies[meaning.body] ?? { feet: [], x0: 0 }
    const reach = Math.max(1, ...feet.map((foot) => Math.abs(foot.x - x0)))
    return { perUnit: reach / programUnit, quantity: 'slope' }
  }
  if (meaning.fact === 'least') {
    const { p, q } = train.couplings[meaning.coupling] ?? { p: 0, q: 0 }
    const lever = toothMeshes({ p, q }).find(({ place }) => place === meaning.what)?.lever ?? 1
    return { perUnit: lever / programUnit, quantity: 'slope' }
  }
  if (meaning.fact !== 'tolerance') return { perUnit: 1 / programUnit, quantity: 'fine' }
  if (isAxial(meaning.what)) return { perUnit: (1000 * share) / programUnit, quantity: 'length' }
  const coupling = train.couplings[meaning.coupling]
  const check = coupling && checksOf(coupling).find(({ what }) => what === meaning.what)
  return {
    perUnit: (share * (check?.lever ?? 1)) / programUnit,
    quantity: meaning.what === 'offset' ? 'fine' : 'slope',
  }
}
