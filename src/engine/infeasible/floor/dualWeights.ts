import { tol } from '../../../mechanics/tolerances'
import type { LeastShare } from '../../lp/leastShare'
import { leaned, pressing, type Lean } from '../../lp/duals'
import { shareColumn, type Meaning, type Program } from '../../lp/program'
import { shareWeight } from '../../lp/stage'

/** How much of the floor a tolerance carries: the weights of all tolerances add up to 1. */
export interface Pull {
  readonly meaning: Extract<Meaning, { fact: 'tolerance' }>
  readonly weight: number
}

/** A limit that the floor leans on, and what one more program unit of room would take off it. */
export interface Prop {
  readonly meaning: Exclude<Meaning, { fact: 'tolerance' }>
  readonly side: 'lower' | 'upper'
  readonly price: number
  /** Mean direction in which a circle is pressed, from u toward w. */
  readonly toward?: Lean
}

/** Reads the duals of the floor's program: which tolerances pull against each other, over which limits. */
export function pressOn(
  program: Program,
  { lowest }: LeastShare,
): { readonly pulls: Pull[]; readonly props: Prop[] } {
  const pulls = new Map<string, Pull>()
  const props = new Map<string, Prop>()
  for (const { row, cut, side, dual, weight } of pressing(program, lowest, { part: tol.noPress })) {
    const { meaning } = row
    if (meaning.fact === 'tolerance') {
      const limit = row.terms.find(([column]) => column === shareColumn)?.[1] ?? 0
      const key = `${meaning.coupling} ${meaning.state} ${meaning.what}`
      const carried = (pulls.get(key)?.weight ?? 0) + (dual * limit) / shareWeight
      pulls.set(key, { meaning, weight: carried })
      continue
    }
    const price = weight / shareWeight
    const key = `${JSON.stringify(meaning)} ${side}`
    const known = props.get(key)
    const toward = cut && leaned(known?.toward, cut, price)
    props.set(key, { meaning, side, price: (known?.price ?? 0) + price, ...(toward && { toward }) })
  }
  return {
    pulls: [...pulls.values()].sort((a, b) => b.weight - a.weight),
    props: [...props.values()].sort((a, b) => b.price - a.price),
  }
}
