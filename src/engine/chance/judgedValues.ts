import { axialChecks } from '../../mechanics/axial'
import { checksOf } from '../../mechanics/misalignment/check'
import type { CheckResult, CouplingMotion } from '../../mechanics/misalignment/shares'
import type { Coupling } from '../../mechanics/train'

/** One number that is judged of a coupling, and how a change of the coupling changes it. */
export interface JudgedValue {
  readonly what: CheckResult['what']
  readonly way: 'y' | 'z' | 'x'
  /** mrad, or um for the offset, or mm for the gap. */
  readonly of: (by: CouplingMotion) => number
}

/** Every number that is judged of a coupling, in the order of its checks: y and z of each, then those along the train. */
export function judgedValues(coupling: Coupling): JudgedValue[] {
  return [
    ...checksOf(coupling).flatMap(({ what, offset, slope }): JudgedValue[] => [
      { what, way: 'y', of: ({ misalignment: d }) => offset * d.y + slope * d.sy },
      { what, way: 'z', of: ({ misalignment: d }) => offset * d.z + slope * d.sz },
    ]),
    ...(coupling.axial
      ? axialChecks(coupling.axial, 1).map(({ what }): JudgedValue => ({
          what,
          way: 'x',
          of: ({ gap }) => gap / 1000,
        }))
      : []),
  ]
}

/** Where a coupling stands in a state: its numbers in the same order, and the limit of each. */
export interface JudgedState {
  readonly values: readonly number[]
  readonly limits: readonly number[]
  /** So many numbers from the first on are judged two by two as vectors; those along the train stand behind. */
  readonly pairs: number
}

export function judgedState(coupling: Coupling, checks: readonly CheckResult[]): JudgedState {
  const numbers = checks.flatMap(({ y, z, x, limit }) =>
    [y, z, x].flatMap((value) => (value === undefined ? [] : [{ value, limit }])),
  )
  return {
    values: numbers.map(({ value }) => value),
    limits: numbers.map(({ limit }) => limit),
    pairs:
      coupling.tolerance.shape === 'round'
        ? checks.reduce(
            (count, { y, z }) => count + (y === undefined || z === undefined ? 0 : 2),
            0,
          )
        : 0,
  }
}
