import type { ReadingSet } from './readingSet'
import type { Millimetres } from './units'

/** A time at which a train was opened and closed again, as its file keeps it; oldest first. */
export interface Outage {
  readonly id: string
  readonly name: string
  readonly place: string
  readonly when: string
  /** Whether it is as it was sealed; undefined where it was never sealed. */
  readonly sealed?: boolean
  readonly couplings: readonly OutageCoupling[]
}

interface OutageCoupling {
  /** Id, of a coupling that the train may no longer have. */
  readonly coupling: string
  readonly place: string
  readonly p: Millimetres
  readonly q: Millimetres
  readonly found?: readonly ReadingSet[]
  readonly left?: readonly ReadingSet[]
}
