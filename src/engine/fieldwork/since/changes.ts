import { counted, listed } from '../../../language/names'
import { covarianceOfSums } from '../../../mechanics/covarianceOfSums'
import type { Misalignment } from '../../../mechanics/readings/equation'
import type { Train } from '../../../mechanics/train'
import { foundLines } from '../../../mechanics/uncertainty/foundLines'

/** How one coupling lies otherwise than it did: right axis against left, at its mid-span of today, cold. */
export interface CouplingChange {
  /** Index in the couplings of today. */
  readonly coupling: number
  /** um, mrad */
  readonly change: Misalignment
  /** Covariance of `[y, sy, z, sz]`: that of the readings then and that of those of today, taken as independent. */
  readonly covariance: readonly (readonly number[])[]
}

/** Why two files cannot be compared; empty where they can: the same machines in a line, joined by the same couplings. */
export function notComparable(then: Train, now: Train): string[] {
  const machines = (train: Train) => train.machines.map(({ id }) => id)
  const [before, after] = [machines(then), machines(now)]
  if (before.join('\n') !== after.join('\n'))
    return [
      `the machines are others: ${listed(before)} then, ${listed(after)} now; both files must have the same ids in the same order`,
    ]
  const [joined, joins] = [then.couplings.length, now.couplings.length]
  return joined === joins
    ? []
    : [`${counted(joined, 'coupling', 'couplings')} then, ${joins} now: both files must have all`]
}

/**
 * What the lines of the couplings changed by from one train file to another of the same train, both read cold.
 * A line read then about another mid-span is carried to that of today.
 * @throws RangeError for trains that `notComparable` tells apart
 */
export function changesSince(then: Train, now: Train): CouplingChange[] {
  const [before, after] = [foundLines(then), foundLines(now)]
  return now.couplings.map(({ id, left, right, mid }, coupling): CouplingChange => {
    const c = then.couplings.findIndex((one) => one.left === left && one.right === right)
    const [was, is] = [before[c], after[coupling]]
    const old = then.couplings[c]
    if (!was || !is || !old) throw new RangeError(`coupling ${id} was not there`)
    const arm = mid - old.mid
    // y and z at the other mid-span, by the slopes; um a mrad is mm
    const carry = [
      [1, arm, 0, 0],
      [0, 1, 0, 0],
      [0, 0, 1, arm],
      [0, 0, 0, 1],
    ]
    const { line } = was
    return {
      coupling,
      change: {
        y: is.line.y - line.y - arm * line.sy,
        sy: is.line.sy - line.sy,
        z: is.line.z - line.z - arm * line.sz,
        sz: is.line.sz - line.sz,
      },
      covariance: carry.map((a, i) =>
        carry.map((b, j) => (is.covariance[i]?.[j] ?? 0) + covarianceOfSums(a, was.covariance, b)),
      ),
    }
  })
}

/** Changes of several times added up, coupling by coupling, with the covariance of the sum. */
export const sumOf = (times: readonly (readonly CouplingChange[])[]): CouplingChange[] =>
  (times[0] ?? []).map(({ coupling }, c) => {
    const own = times.flatMap((changes) => changes.slice(c, c + 1))
    const sum = (of: (one: CouplingChange) => number) => own.reduce((all, one) => all + of(one), 0)
    return {
      coupling,
      change: {
        y: sum(({ change }) => change.y),
        sy: sum(({ change }) => change.sy),
        z: sum(({ change }) => change.z),
        sz: sum(({ change }) => change.sz),
      },
      covariance: [0, 1, 2, 3].map((i) =>
        [0, 1, 2, 3].map((j) => sum(({ covariance }) => covariance[i]?.[j] ?? 0)),
      ),
    }
  })
