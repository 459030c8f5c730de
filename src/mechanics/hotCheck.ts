import type { GrowthPoint } from './growthPoint'
import type { ReadingSet } from './readingSet'
import type { Minutes } from './units'

/**
 * What was found of a train that ran: couplings read after its stop, and how far machines moved from off line to
 * running.
 */
export interface HotCheck {
  readonly id: string
  readonly name: string
  /** Place in the document, such as `hotChecks[0]`. */
  readonly place: string
  /** Index in `states` of the state in which the train ran. */
  readonly state: number
  /** False where it is kept and counts for nothing. */
  readonly used: boolean
  readonly when?: string
  readonly by?: string
  /** Index in `machines` of the machine that is taken to have moved as its growth says. */
  readonly datum?: number
  readonly couplings: readonly HotCoupling[]
  readonly moved: readonly MovedMachine[]
}

export interface HotCoupling {
  /** Index in `couplings`. */
  readonly coupling: number
  /** Time constant of its cooling, where it is known, with its standard uncertainty. */
  readonly decay?: { readonly time: Minutes; readonly u?: Minutes }
  /** Earliest first. */
  readonly times: readonly ReadAfter[]
}

/** Reading sets taken so long after the stop. */
export interface ReadAfter {
  readonly place: string
  readonly after: Minutes
  readonly found: readonly ReadingSet[]
}

export interface MovedMachine {
  /** Index in `machines`. */
  readonly machine: number
  /** What it was measured against. */
  readonly against?: string
  readonly points: readonly GrowthPoint[]
}
