import { tol } from '../../../mechanics/tolerances'
import type { LeastShare } from '../../lp/leastShare'
import { cutRow } from '../../lp/cuts'
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
  readonly toward?: { readonly u: number; readonly w: number }
}

/** Reads the duals of the floor's program: which tolerances pull against each other, over which limits. */
export function pressOn(
  program: Program,
  { lowest }: LeastShare,
): { readonly pulls: Pull[]; readonly props: Prop[] } {
  const { duals } = lowest.answer
  const tangents = lowest.cuts
    .map((cut) => ({ cut, row: cutRow(program, cut, '') }))
    .filter(({ row }) => row.terms.length > 0)
  const rows = [
    ...program.limits.map((row) => ({ row, cut: undefined })),
    ...tangents.map(({ row, cut }) => ({ row, cut })),
  ]
  const largest = Math.max(0, ...duals.map(Math.abs))
  const pulls = new Map<string, Pull>()
  const props = new Map<string, Prop>()
  rows.forEach(({ row, cut }, i) => {
    const dual = duals[i] ?? 0
    if (Math.abs(dual) <= tol.noPress * largest) return
    const { meaning } = row
    if (meaning.fact === 'tolerance') {
      const limit = row.terms.find(([column]) => column === shareColumn)?.[1] ?? 0
      const key = `${meaning.coupling} ${meaning.state} ${meaning.what}`
      const weight = (pulls.get(key)?.weight ?? 0) + (dual * limit) / shareWeight
      pulls.set(key, { meaning, weight })
      return
    }
    const side = dual > 0 ? 'lower' : 'upper'
    const price = Math.abs(dual) / shareWeight
    const key = `${JSON.stringify(meaning)} ${side}`
    const known = props.get(key)
    const toward = cut && {
      u: (known?.toward?.u ?? 0) + price * Math.cos(cut.angle),
      w: (known?.toward?.w ?? 0) + price * Math.sin(cut.angle),
    }
    props.set(key, { meaning, side, price: (known?.price ?? 0) + price, ...(toward && { toward }) })
  })
  return {
    pulls: [...pulls.values()].sort((a, b) => b.weight - a.weight),
    props: [...props.values()].sort((a, b) => b.price - a.price),
  }
}
