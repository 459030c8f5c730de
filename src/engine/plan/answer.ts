import type { Refusal } from '../../document/refusal'
import type { Motion } from '../../mechanics/motion'
import type { Micrometres, Milliradians, Millimetres } from '../../mechanics/units'

/**
 * What the programs of a train came to; engine units, as in every answer: um, mm, mrad. Keys as in the
 * output contract, which `src/json` writes in the document's units.
 */
export interface PlanFigures {
  status: PlanStatus
  /** Why there is no answer; with status "unproven" or "stopped" only. */
  why?: string
  name: string
  /** Share of every tolerance that the plan was allowed to use. */
  share: number
  held: string[]
  cost?: Micrometres
  total?: Totals
  bodies?: BodyAnswer[]
  feet?: FootAnswer[]
  couplings?: CouplingAnswer[]
  asFound: AsFoundAnswer[]
  worstShare?: number
  /** Worst share as found. */
  standingShare: number
  /** Null when its program was stopped. */
  floor: number | null
  binding?: BindingAnswer[]
  expected?: ExpectedAnswer[]
  findings: Finding[]
  notEntered: NotEntered[]
  proof?: ProofAnswer
}

export type PlanStatus = 'planned' | 'in-tolerance' | 'impossible' | 'unproven' | 'stopped'

interface Refused {
  refused: Refusal[]
}

export interface Totals {
  shim: Micrometres
  side: Micrometres
  axial: Micrometres
}

export interface BodyAnswer {
  id: string
  held: boolean
  /** Own motion: um and mrad. */
  move: Motion
}

export interface FootAnswer {
  body: string
  foot: string
  shim: Micrometres
  side: Micrometres
  axial: Micrometres
  packAfter?: Micrometres
  boltAt?: { x: Micrometres; y: Micrometres; room: Micrometres }
}

export interface CouplingAnswer {
  coupling: string
  state: string
  share: number
  checks: CheckAnswer[]
  asFound: { share: number; checks: CheckAnswer[] }
}

/** One limit: um for an offset, mm for a gap, mrad for the rest. */
export interface CheckAnswer {
  what: 'left plane' | 'right plane' | 'offset' | 'angle' | 'gap'
  y?: number
  z?: number
  x?: number
  limit: number
  share: number
}

export interface AsFoundAnswer {
  coupling: string
  /** Mid-span. */
  at: Millimetres
  offset: { y: Micrometres; z: Micrometres }
  slope: { y: Milliradians; z: Milliradians }
  /** Standard uncertainties of the four, from those of the readings. */
  u: { offset: { y: number; z: number }; slope: { y: number; z: number } }
  residual: number
  share: Record<string, number>
}

export interface BindingAnswer {
  /** minimum pack, maximum pack, lift, hole, tilt, restraint, shim key, side key, or a coupling's check. */
  limit: string
  where: string
  /** Ids of the part whose limit it is. */
  part: {
    body?: string
    foot?: string
    restraint?: string
    coupling?: string
    state?: string
    what?: string
    way?: string
  }
  /** Cost saved (um) per um, mrad or mm of relaxing the limit. */
  price: number
  quantity: 'fine' | 'slope' | 'length'
  /** Relaxation up to which the price holds: um, mrad or mm; null when it holds without end. */
  upTo: number | null
}

/** What a set should show: um, its line in um and mrad. */
export type ExpectedAnswer =
  | { coupling: string; set: number; readings: [hour: number, value: number][] }
  | {
      coupling: string
      set: number
      offset: { y: number; z: number }
      slope: { y: number; z: number }
    }

export interface Finding {
  where: string
  what: string
}

export interface NotEntered {
  where: string
  what: string
  instead: string
}

export interface ProofAnswer {
  bound: Micrometres
  gap: Micrometres
  worstViolation: Micrometres
  checkedBy: string
}

/** What `check` answers: nothing is solved. */
export type CheckReport =
  | Refused
  | {
      ok: true
      name: string
      findings: Finding[]
      notEntered: NotEntered[]
      closure: { coupling: string; set: number; value: Micrometres }[]
      asFound: AsFoundAnswer[]
      standingShare: number
    }
