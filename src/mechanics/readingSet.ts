import type { Micrometres, Millimetres, Milliradians } from './units'

export interface Reading {
  readonly hour: number
  readonly value: Micrometres
}

interface Sweep {
  readonly place: string
  readonly used: boolean
  readonly readings: readonly Reading[]
  readonly u: Micrometres
  /** False where the file gives no u. */
  readonly uGiven: boolean
}

/** The bracket that holds a dial. */
interface Bracket {
  readonly sag: Micrometres
  readonly sagGiven: boolean
  /** Standard uncertainty of the sag; undefined where the file gives none. */
  readonly uSag?: Micrometres
  /** Name of the bracket; sets of a coupling that name the same one share its error. */
  readonly bracket?: string
}

export type ReadingSet =
  | (Sweep &
      Bracket & {
        readonly kind: 'rim'
        readonly rides: 'left' | 'right'
        readonly at: Millimetres
        /** Standard uncertainty of `at`; undefined where the file gives none. */
        readonly uAt?: Millimetres
      })
  | (Sweep &
      Bracket & {
        readonly kind: 'face'
        readonly rides: 'left' | 'right'
        readonly diameter: Millimetres
        /** Standard uncertainty of `diameter`; undefined where the file gives none. */
        readonly uDiameter?: Millimetres
        readonly face: 'front' | 'back'
      })
  | (Sweep & {
      readonly kind: 'gap'
      readonly diameter: Millimetres
      readonly uDiameter?: Millimetres
    })
  | (Sweep &
      Bracket & {
        readonly kind: 'spool'
        readonly end: 'left' | 'right'
        readonly diameter: Millimetres
        readonly uDiameter?: Millimetres
      })
  | {
      readonly kind: 'line'
      readonly place: string
      readonly used: boolean
      readonly at: Millimetres
      readonly offset: { readonly y?: Micrometres; readonly z?: Micrometres }
      readonly slope: { readonly y?: Milliradians; readonly z?: Milliradians }
      readonly u: Micrometres
      readonly uGiven: boolean
      readonly uSlope: Milliradians
      readonly uSlopeGiven: boolean
    }
