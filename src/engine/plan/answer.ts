import type { Refusal } from '../../document/refusal'

/** What the programs of a train came to; numbers in the document's own units. Keys as in the output contract. */
export interface PlanFigures {
  status: PlanStatus
  /** Why there is no answer; with status "unproven" or "stopped" only. */
  why?: string
  name: string
  /** Share of every tolerance that the plan was allowed to use. */
  share: number
  held: string[]
  cost?: number
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

export interface Refused {
  refused: Refusal[]
}

export interface Totals {
  shim: number
  side: number
  axial: number
}

export interface BodyAnswer {
  id: string
  held: boolean
  move: { tx: number; ty: number; tz: number; sy: number; sz: number; roll: number }
}

export interface FootAnswer {
  body: string
  foot: string
  shim: number
  side: number
  axial: number
  packAfter?: number
  boltAt?: { x: number; y: number; room: number }
}

export interface CouplingAnswer {
  coupling: string
  state: string
  share: number
  checks: CheckAnswer[]
  asFound: { share: number; checks: CheckAnswer[] }
}

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
  at: number
  offset: { y: number; z: number }
  slope: { y: number; z: number }
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
  /** Cost saved per unit of relaxing the limit. */
  price: number
  unit: string
  /** Relaxation up to which the price holds, in that unit; null when it holds without end. */
  upTo: number | null
}

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
  bound: number
  gap: number
  worstViolation: number
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
      closure: { coupling: string; set: number; value: number }[]
      asFound: AsFoundAnswer[]
      standingShare: number
    }
