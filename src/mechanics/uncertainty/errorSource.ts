import type { CouplingMotion } from '../misalignment/shares'

/** What errors belong together, so that one could say what it would buy if they were smaller. */
export type ErrorGroup =
  | { readonly kind: 'readings' | 'brackets' | 'gap'; readonly coupling: number }
  | { readonly kind: 'growth'; readonly machine: number }
  | { readonly kind: 'survey'; readonly survey: number }
  | { readonly kind: 'work' | 'places' }

/** What one standard deviation of an error does to a coupling: in one state, or in every state. */
export interface ErrorEffect {
  readonly coupling: number
  /** Index in `states`; undefined: in every one alike. */
  readonly state?: number
  /** um, mrad, and um of the gap. */
  readonly by: CouplingMotion
}

/** One error that is independent of all others: a standard normal draw, with what it does. */
export interface ErrorSource {
  /** Names the draw, so that the same error is drawn alike in every plan that is compared. */
  readonly key: string
  readonly group: ErrorGroup
  readonly effects: readonly ErrorEffect[]
}

/** A change of a coupling's line alone, from `[y, sy, z, sz]` (um and mrad). */
export const lineChange = ([y = 0, sy = 0, z = 0, sz = 0]: readonly number[]): CouplingMotion => ({
  misalignment: { y, sy, z, sz },
  gap: 0,
})

/** The four numbers of the first effect of a source that changes one line alone. */
export const numbersOf = ([effect]: readonly ErrorEffect[]): number[] => {
  const { y, sy, z, sz } = effect?.by.misalignment ?? { y: 0, sy: 0, z: 0, sz: 0 }
  return [y, sy, z, sz]
}
