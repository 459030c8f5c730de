import { tol } from '../mechanics/tolerances'
import type { Stator } from '../mechanics/stator'
import type { StatorDocument } from './statorSchema'

/** A stator as the engine has it; nothing where no gap was measured, or where what was measured counts no more. */
export function convertStator(stator: StatorDocument | undefined): { readonly stator?: Stator } {
  const { airGaps: gaps = [], feet = [], aim, limit, basis, use = true } = stator ?? {}
  if (!use || gaps.length === 0) return {}
  return {
    stator: {
      gaps: gaps.map(({ id, at, top, three, bottom, nine }) => ({
        ...{ id, at, top, three, bottom, nine },
      })),
      feet: feet.map(({ id, x }) => ({ id, x })),
      aim: { y: aim?.y ?? 0, z: aim?.z ?? 0 },
      limit: limit ?? tol.airGap,
      ...(basis !== undefined && { basis }),
    },
  }
}
