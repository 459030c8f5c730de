import type { Micrometres, Millimetres } from './units'

/** Movement of an axis at one x from the shut-down position to a state; only what was given. */
export interface GrowthPoint {
  readonly at: Millimetres
  readonly axis: 'left' | 'right' | 'both'
  readonly rise?: Micrometres
  readonly side?: Micrometres
  readonly axial?: Micrometres
  /** Standard uncertainty of each quantity that the point gives; undefined where the file gives none. */
  readonly u?: Micrometres
  /** Whether temperatures give part of the rise. */
  readonly heated: boolean
  /** Half the width of each quantity that is given as an interval; its value above is the middle. */
  readonly half: { readonly [Q in GrowthQuantity]?: Micrometres }
  readonly source: GrowthSource
}

/** Where a growth point comes from: given by somebody, worked out from temperatures, measured off line to running. */
export interface GrowthSource {
  readonly kind: 'given' | 'heat' | 'measured'
  readonly when?: string
  readonly by?: string
}

/** What a growth point may give. */
export const growthQuantities = ['rise', 'side', 'axial'] as const
export type GrowthQuantity = (typeof growthQuantities)[number]
