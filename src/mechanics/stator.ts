import type { Micrometres, Millimetres } from './units'

/** A stator on feet of its own, around the rotor of a machine. */
export interface Stator {
  /** Measured with the rotor where its couplings were read; at least one. */
  readonly gaps: readonly AirGap[]
  readonly feet: readonly { readonly id: string; readonly x: Millimetres }[]
  /** Where the middle of the bore is to stand from the rotor's axis, cold; + is toward 3 o'clock, up. */
  readonly aim: { readonly y: Micrometres; readonly z: Micrometres }
  /** The most that a gap may differ from the mean one around, as a part of that. */
  readonly limit: number
  readonly basis?: string
}

/** Distances between rotor and bore at one place along the shaft. */
export interface AirGap {
  readonly id: string
  readonly at: Millimetres
  readonly top: Micrometres
  readonly three: Micrometres
  readonly bottom: Micrometres
  readonly nine: Micrometres
}
