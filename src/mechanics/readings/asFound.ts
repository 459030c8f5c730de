import type { Micrometres } from '../units'
import type { Coupling } from '../train'
import { equationsOf, readingWithoutZero, type Misalignment, type SweepSet } from './equation'
import { readingSystem } from './system'

/** The line of a coupling as its readings give it, with what they leave unsure. */
export interface AsFound {
  readonly line: Misalignment
  /** Covariance of `[y, sy, z, sz]` (um and mrad), from the standard uncertainties of the readings; of a line that surveys join, of all its errors. */
  readonly covariance: readonly (readonly number[])[]
  /** The same by the standard uncertainties of what was read and surveyed alone, where it is another. */
  readonly ofValues?: readonly (readonly number[])[]
  /** Covariance of what a second reading by the same means differs by, where it is another: sag and places then err alike. */
  readonly again?: readonly (readonly number[])[]
  /** Root mean square of residual / u over the readings used; no unit. */
  readonly residual: number
  /** The same of the line of the readings alone, which says whether these contradict each other; where surveys join. */
  readonly aloneResidual?: number
  /** Fitted zero of each set, in the order of `found`; 0 for a line. */
  readonly zeros: readonly Micrometres[]
}

/**
 * Weighted least squares over all sets used (weights 1/u^2), each sweep with a zero of its own.
 * @throws RangeError when the readings leave an unknown open; `undetermined` says so beforehand
 */
export function asFound(coupling: Coupling): AsFound {
  const { equations, scale, svd, open } = readingSystem(coupling)
  if (open.length > 0) throw new RangeError(`readings of ${coupling.id} leave its line open`)
  const values = equations.map(({ value, weight }) => value * weight)
  const parts = svd.values.map((s, k) => {
    const left = svd.left[k] ?? []
    return left.reduce((sum, entry, i) => sum + entry * (values[i] ?? 0), 0) / (s * s)
  })
  const unknowns = scale.map(
    (sc, j) => parts.reduce((sum, part, k) => sum + part * (svd.right[k]?.[j] ?? 0), 0) / sc,
  )
  const covariance = scale.map((si, i) =>
    scale.map((sj, j) =>
      svd.values.reduce(
        (sum, s, k) =>
          sum + ((svd.right[k]?.[i] ?? 0) * (svd.right[k]?.[j] ?? 0)) / (s * s * si * sj),
        0,
      ),
    ),
  )
  const [y = 0, sy = 0, z = 0, sz = 0] = unknowns
  const line = { y, sy, z, sz }
  return { line, covariance, ...besideLine(coupling, line) }
}

/** What the readings used leave over of a line, and the zeros that fit it best, whatever it is made of. */
export function besideLine(
  coupling: Coupling,
  line: Misalignment,
): Pick<AsFound, 'residual' | 'zeros'> {
  const numbers = [line.y, line.sy, line.z, line.sz]
  // equations of sweeps are centred, so that each has its best zero
  const squares = coupling.found
    .filter((set) => set.used)
    .flatMap((set) => equationsOf(set, coupling))
    .map(({ coefficients, value, weight }) => {
      const model = coefficients.reduce((sum, c, k) => sum + c * (numbers[k] ?? 0), 0)
      return ((value - model) * weight) ** 2
    })
  return {
    residual: Math.sqrt(squares.reduce((a, b) => a + b, 0) / squares.length),
    zeros: coupling.found.map((set) => (set.kind === 'line' ? 0 : fittedZero(set, coupling, line))),
  }
}

/** The zero that fits a sweep best once the line is known: the mean of what is left over. */
function fittedZero(set: SweepSet, coupling: Coupling, line: Misalignment): Micrometres {
  const rest = set.readings.map(
    ({ hour, value }) => value - readingWithoutZero(set, coupling, line, hour),
  )
  return rest.reduce((a, b) => a + b, 0) / rest.length
}
