import { tol } from '../../../mechanics/tolerances'
import type { LeastShare } from '../../lp/leastShare'
import { towardTangent, pressingRows, type CircleDirection } from '../../lp/duals'
import { shareColumn, type Meaning, type Program } from '../../lp/program'
import { shareWeight } from '../../lp/stage'

/** How much of the floor a tolerance carries: the weights of all tolerances add up to 1. */
export interface CouplingWeight {
  readonly meaning: Extract<Meaning, { fact: 'tolerance' }>
  readonly weight: number
}

/** A limit that the floor leans on, and the share that one more program unit of room would take off it. */
export interface LimitWeight {
  readonly meaning: Exclude<Meaning, { fact: 'tolerance' | 'least' }>
  readonly side: 'lower' | 'upper'
  readonly price: number
  /** Mean direction in which a circle is pressed, from u toward w. */
  readonly toward?: CircleDirection
}

/** Teeth of a gear coupling that press, being kept off dead straight. */
export type PressedTeeth = Extract<Meaning, { fact: 'least' }>

/**
 * Reads the duals of the floor's program: which tolerances pull against each other, over which limits, and against which
 * teeth, where the program keeps any off dead straight.
 */
export function floorWeights(
  program: Program,
  { lowest }: LeastShare,
): {
  readonly pulls: CouplingWeight[]
  readonly props: LimitWeight[]
  readonly teeth: PressedTeeth[]
} {
  const pulls = new Map<string, CouplingWeight>()
  const props = new Map<string, LimitWeight>()
  const teeth: PressedTeeth[] = []
  for (const { row, cut, side, dual, weight } of pressingRows(program, lowest, {
    part: tol.noPress,
  })) {
    const { meaning } = row
    if (meaning.fact === 'tolerance') {
      const limit = row.terms.find(([column]) => column === shareColumn)?.[1] ?? 0
      const key = `${meaning.coupling} ${meaning.state} ${meaning.what}`
      const carried = (pulls.get(key)?.weight ?? 0) + (dual * limit) / shareWeight
      pulls.set(key, { meaning, weight: carried })
      continue
    }
    if (meaning.fact === 'least') {
      teeth.push(meaning)
      continue
    }
    const price = weight / shareWeight
    const key = `${JSON.stringify(meaning)} ${side}`
    const known = props.get(key)
    const toward = cut && towardTangent(known?.toward, cut, price)
    props.set(key, { meaning, side, price: (known?.price ?? 0) + price, ...(toward && { toward }) })
  }
  return {
    pulls: [...pulls.values()].sort((a, b) => b.weight - a.weight),
    props: [...props.values()].sort((a, b) => b.price - a.price),
    teeth,
  }
}
