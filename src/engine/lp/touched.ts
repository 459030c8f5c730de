import { tol } from '../../mechanics/tolerances'
import type { Constraints } from './constraints'
import type { LinearProgram, Optimal } from './solver'

/** Which of its bounds a constraint stands at; "fixed" where both are the same. */
export type BoundSide = 'lower' | 'upper' | 'fixed'

/** A constraint that an answer stands at, with the size of its dual. */
export interface Touched {
  readonly constraint: number
  readonly side: BoundSide
  readonly weight: number
}

/** The constraints that an answer stands at, those first that it presses on most. */
export function constraintsAt(
  { objective, rows }: LinearProgram,
  constraints: Constraints,
  { duals }: Optimal,
  values: Float64Array,
): Touched[] {
  const { n, count, lower, upper } = constraints
  const reduced = [...objective]
  rows.forEach(({ terms }, i) => {
    const dual = duals[i] ?? 0
    if (dual === 0) return
    for (const [column, a] of terms) reduced[column] = (reduced[column] ?? 0) - dual * a
  })
  const out: Touched[] = []
  for (let k = 0; k < count; k++) {
    const [low, high, value] = [lower[k] ?? 0, upper[k] ?? 0, values[k] ?? 0]
    const near = (bound: number) =>
      Number.isFinite(bound) &&
      Math.abs(value - bound) <= tol.pathTouched * Math.max(1, Math.abs(bound))
    const [isLow, isHigh] = [near(low), near(high)]
    if (!isLow && !isHigh) continue
    const dual = (k < n ? reduced[k] : duals[k - n]) ?? 0
    const side: BoundSide =
      low === high ? 'fixed' : isLow && (!isHigh || dual > 0) ? 'lower' : 'upper'
    out.push({ constraint: k, side, weight: Math.abs(dual) })
  }
  return out.sort((a, b) => b.weight - a.weight)
}
