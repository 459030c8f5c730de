import type { Micrometres } from '../../../mechanics/units'
import type { FieldChange } from './change'

export type RemedyKind =
  | 'share'
  | 'guard'
  | 'intervals'
  | 'hold'
  | 'state tolerance'
  | 're-centre'
  | 'minimum pack'
  | 'skid'
  | 'raise'
  | 'shank'
  | 'dowel'
  | 'coupling tolerance'
  | 'tilt'
  | 'open hole'
  | 'machine feet'
  | 'restraint'

/** Least that one part must give: um of room, mrad of tilt, or a new tolerance as a factor. */
export interface RemedyAmount {
  where: string
  part: { body?: string; foot?: string; restraint?: string; coupling?: string; state?: string }
  /** How much more (room, thickness, pitch); for tolerances and shares the new value. */
  value: number
  quantity: 'fine' | 'slope' | 'factor'
}

/** A change to the train that was tried on a copy and solved. */
export interface Remedy {
  /** One kind, or two joined by " + ". */
  kind: string
  /** 1 = minutes, 10 = weeks; of a pair the sum. */
  effort: number
  where: string
  /** Least amounts in whole steps; empty where there is nothing to measure. */
  amount: RemedyAmount[]
  solves: boolean
  /** Smallest worst share that any move reaches after it. */
  floor: number | null
  /** Least cost after it, at the share asked for; null where it does not solve. */
  cost: Micrometres | null
  /** The same with the effort of every body that the plan then disturbs. */
  costWithEffort: Micrometres | null
  worstShare: number | null
  /** Who must agree, by what they answer for. */
  agree: string
  /** Crew hours, clean-up included, waiting not. Common practice, no source. */
  hours: [low: number, high: number]
  risk: string
  /** Limits that the plan after it still leans on. */
  tight: string[]
  sentence: string
  /** Fields of the train file that change. */
  change: FieldChange[]
}

/** How many other choices of held bodies were tried before anything was to be machined. */
export interface HoldsTried {
  tried: number
  solve: number
}
