import type { Coupling } from '../../../mechanics/train'
import type { Misalignment } from '../../../mechanics/readings/equation'

/** How a coupling changed, beside how it should have. Engine units. */
export interface CouplingChange {
  readonly coupling: Coupling
  readonly expected: Misalignment
  /** Missing where the new readings leave the line open. */
  readonly measured?: Misalignment
  /** Variances of `[y, sy, z, sz]` of the measured change. */
  readonly covariance?: readonly number[]
  /** Root mean square of residual / u of the new readings. */
  readonly residual: number
  /** Largest difference of any reading (um). */
  readonly largest: number
}

/**
 * Marks of common practice, no source: a difference up to 30 um is reading and shimming; a change of
 * less than 100 um says nothing about its own scale; a sixth more or less is a scale.
 */
export const marks = { doubt: 30, tells: 100, scale: 1 / 6, contradict: 4 }

/** Components as displacements (um) of a like size: offset, and slope at the coupling's reach. */
export function parts({ coupling }: CouplingChange, d: Misalignment): number[] {
  const reach = Math.max(200, coupling.q - coupling.p)
  return [d.y, d.z, d.sy * reach, d.sz * reach]
}

/** Most that each of these may differ by and mean nothing: three standard uncertainties, at least 30 um. */
export function doubtOf(change: CouplingChange): number[] {
  const reach = Math.max(200, change.coupling.q - change.coupling.p)
  const [y = 0, sy = 0, z = 0, sz = 0] = change.covariance ?? []
  return [Math.sqrt(y), Math.sqrt(z), Math.sqrt(sy) * reach, Math.sqrt(sz) * reach].map((u) =>
    Math.max(marks.doubt, 3 * u),
  )
}

/** Which of these differ by more than that; undefined where the new readings leave the line open. */
export function differs(change: CouplingChange): boolean[] | undefined {
  const { measured, expected } = change
  if (!measured) return undefined
  const doubt = doubtOf(change)
  const should = parts(change, expected)
  return parts(change, measured).map(
    (value, k) => Math.abs(value - (should[k] ?? 0)) > (doubt[k] ?? 0),
  )
}

/** What a difference between measured and expected readings means. */
export interface DifferenceMeaning {
  kind:
    | 'within doubt'
    | 'too small'
    | 'too large'
    | 'reversed'
    | 'one coupling'
    | 'one machine'
    | 'up and down only'
    | 'sets contradict'
    | 'other'
  words: string
  /** Measured change as a part of the expected one, where the kind is about that. */
  ratio?: number
}
