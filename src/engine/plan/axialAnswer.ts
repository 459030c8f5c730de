import type { Micrometres, Millimetres } from '../../mechanics/units'

/** The train along its shafts, from left to right: where its machines go endwise and what its gaps come to. */
export interface AxialAnswer {
  machines: EndwiseAnswer[]
  /** Those whose gap was entered. */
  couplings: AxialCouplingAnswer[]
}

/** How far a machine goes endwise; + is to the right. */
export interface EndwiseAnswer {
  machine: string
  /** By the plan: its feet with its skid, and its shafts, which pitch and yaw carry on; left out where there is none. */
  moves?: { feet: Micrometres; left: Micrometres; right: Micrometres }
  /** By growth, at the planes of its couplings. */
  grows: { state: string; left?: Micrometres; right?: Micrometres }[]
}

export interface AxialCouplingAnswer {
  coupling: string
  /** As measured cold, rotors where they lay then. */
  found: Millimetres
  /** The same when the plan is done; left out where there is none. */
  planned?: Millimetres
  /** Wanted as it runs, and how far off it may be. */
  want: Millimetres
  tolerance: Millimetres
  states: AxialStateAnswer[]
}

/** How a coupling stands in a state, rotors on their magnetic centres: when the plan is done, or else as found. */
export interface AxialStateAnswer {
  state: string
  gap: Millimetres
  /** Of the tolerance in this state; under 0 by how much it is over. */
  left: Millimetres
  /** How far the coupling may come to be drawn out (+) or pressed (-), wherever thrust bearings let rotors lie. */
  stretch?: AxialRoom
  /** Where the rotor that the coupling carries may come to lie, from where it lay; + is to the right. */
  rotor?: AxialRoom & { side: 'left' | 'right'; centre: Millimetres }
}

export interface AxialRoom {
  from: Millimetres
  to: Millimetres
  low: Millimetres
  high: Millimetres
  /** To the nearer end of what is allowed; under 0 by how much it is over. */
  left: Millimetres
}
