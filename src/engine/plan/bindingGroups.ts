import { tol } from '../../mechanics/tolerances'
import type { Train } from '../../mechanics/train'
import { checksOf } from '../../mechanics/misalignment/check'
import { programUnit, type Meaning, type Program } from '../lp/program'
import type { Loosened } from '../lp/relax'
import type { CostAnswer } from './solvePlan'

/** A limit that the least cost leans on, with what its duals say one unit of room would save. */
export interface BindingGroup extends Loosened {
  readonly meaning: Meaning
  /** Cost saved per program unit of room; holds for a first small step at most. */
  readonly price: number
  /** Room (program units) that one engine unit of the limit gives: um, mrad or mm. */
  readonly perUnit: number
  readonly unit: 'fine' | 'slope' | 'length'
  /** Mean direction in which a circle is pressed, from u toward w. */
  readonly toward?: { readonly u: number; readonly w: number }
}

/** Collects the duals of the least-cost program by the physical limit they belong to. */
export function bindingGroups(train: Train, program: Program, least: CostAnswer): BindingGroup[] {
  const { duals } = least.answer
  const groups: BindingGroup[] = []
  program.limits.forEach((row, i) => {
    const dual = duals[i] ?? 0
    if (Math.abs(dual) < tol.noPress) return
    groups.push({
      meaning: row.meaning,
      rows: [i],
      side: dual > 0 ? 'lower' : 'upper',
      price: Math.abs(dual),
      ...sizeOf(train, row.meaning, least.share),
    })
  })
  const pressed = new Map<number, { price: number; u: number; w: number }>()
  tangentRows(program, least).forEach(({ circle, angle }, k) => {
    const price = -(duals[program.limits.length + k] ?? 0)
    if (price < tol.noPress) return
    const sum = pressed.get(circle) ?? { price: 0, u: 0, w: 0 }
    pressed.set(circle, {
      price: sum.price + price,
      u: sum.u + price * Math.cos(angle),
      w: sum.w + price * Math.sin(angle),
    })
  })
  for (const [circle, { price, u, w }] of pressed) {
    const meaning = program.circles[circle]?.meaning
    if (!meaning) continue
    groups.push({
      meaning,
      rows: [],
      side: 'upper',
      circle,
      price,
      toward: { u, w },
      ...sizeOf(train, meaning, least.share),
    })
  }
  return groups
}

/** Tangents that stand as rows, in the order of the rows; a circle without motion has none. */
function tangentRows(program: Program, least: CostAnswer) {
  return least.cuts.filter(({ circle }) => {
    const at = program.circles[circle]
    return at !== undefined && at.u.terms.size + at.w.terms.size + at.radius.terms.size > 0
  })
}

/** What one unit of a limit is worth in room. */
function sizeOf(
  train: Train,
  meaning: Meaning,
  share: number,
): Pick<BindingGroup, 'perUnit' | 'unit'> {
  if (meaning.fact === 'tilt') {
    const { feet, x0 } = train.bodies[meaning.body] ?? { feet: [], x0: 0 }
    const reach = Math.max(1, ...feet.map((foot) => Math.abs(foot.x - x0)))
    return { perUnit: reach / programUnit, unit: 'slope' }
  }
  if (meaning.fact !== 'tolerance') return { perUnit: 1 / programUnit, unit: 'fine' }
  if (meaning.what === 'gap') return { perUnit: (1000 * share) / programUnit, unit: 'length' }
  const coupling = train.couplings[meaning.coupling]
  const check = coupling && checksOf(coupling).find(({ what }) => what === meaning.what)
  return {
    perUnit: (share * (check?.lever ?? 1)) / programUnit,
    unit: meaning.what === 'offset' ? 'fine' : 'slope',
  }
}
