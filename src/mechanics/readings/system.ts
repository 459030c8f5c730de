import { tol } from '../tolerances'
import type { Coupling } from '../train'
import { equationsOf, type Equation } from './equation'
import { svd, type Svd } from './svd'

/** The weighted, column-scaled least-squares system of a coupling's readings. */
export interface ReadingSystem {
  readonly equations: readonly Equation[]
  /** What each unknown `[y, sy, z, sz]` was multiplied by. */
  readonly scale: readonly number[]
  readonly svd: Svd
  /** Indices of the singular values that count as nothing: directions the readings leave open. */
  readonly open: readonly number[]
}

/** Builds the system from the sets that are used. */
export function readingSystem(coupling: Coupling): ReadingSystem {
  const equations = coupling.found
    .filter((set) => set.used)
    .flatMap((set) => equationsOf(set, coupling))
  const scale = [0, 1, 2, 3].map((k) => {
    const norm = Math.hypot(...equations.map(({ raw, weight }) => (raw[k] ?? 0) * weight))
    return norm === 0 ? 1 : norm
  })
  const columns = scale.map((s, k) =>
    equations.map(({ coefficients, weight }) => ((coefficients[k] ?? 0) * weight) / s),
  )
  const parts = svd(columns)
  const largest = Math.max(...parts.values)
  const open = parts.values.flatMap((value, k) =>
    value <= tol.singular * largest || value === 0 ? [k] : [],
  )
  return { equations, scale, svd: parts, open }
}
