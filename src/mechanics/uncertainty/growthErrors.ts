import { lineValueAt, type Line } from '../growth'
import type { CouplingMotion } from '../misalignment/shares'
import { growthQuantities, type Coupling, type GrowthQuantity, type Train } from '../train'
import type { Micrometres } from '../units'
import type { ErrorEffect, ErrorSource } from './errorSource'
import {
  doubtfulStates,
  errorLine,
  doubtfulPointsOf,
  sharedError,
  type DoubtfulGrowth,
  type DoubtfulPart,
} from './growthPoints'
import { growthShared } from './usual'

/**
 * Errors of growth: of the variance of every value a part is one error of the machine in a direction, for all its points
 * and states, with the sign of the value (a machine that grows more than figured does so everywhere); the rest is one
 * error a point, state and direction. They go through the same least-squares line as the values. A state between two
 * others has the errors of both, each times what it counts there.
 * @param counts whether the error of a value counts; where not, the value still takes part in its line
 */
export function growthErrors(
  train: Train,
  counts: (point: DoubtfulGrowth) => boolean = () => true,
): ErrorSource[] {
  return train.machines.flatMap((machine, m) =>
    growthQuantities.flatMap((quantity) => {
      const states = doubtfulStates(train, m, quantity)
      const group = { kind: 'growth' as const, machine: m }
      const shared = effectsOf(train, m, quantity, states, (point) =>
        counts(point) ? sharedError(point) * Math.sqrt(growthShared) : 0,
      )
      const apart = doubtfulPointsOf(states).map((point) => ({
        key: `${quantity} of ${machine.id} in ${point.key}`,
        group,
        effects: effectsOf(train, m, quantity, states, (one) =>
          one.key === point.key && counts(one) ? one.u * Math.sqrt(1 - growthShared) : 0,
        ),
      }))
      const all = [{ key: `${quantity} of ${machine.id}`, group, effects: shared }, ...apart]
      return all.filter(({ effects }) => effects.length > 0)
    }),
  )
}

/**
 * What errors at a machine's points do to its couplings in every state.
 * @param states what its growth in each state rests on, in the order of `train.states`
 * @param error of each point (um)
 */
export function effectsOf(
  train: Train,
  m: number,
  quantity: GrowthQuantity,
  states: readonly (readonly DoubtfulPart[])[],
  error: (point: DoubtfulGrowth) => Micrometres,
): (ErrorEffect & { readonly state: number })[] {
  return states.flatMap((parts, state) =>
    train.couplings.flatMap((coupling, c) => {
      const axis = coupling.left === m ? 'right' : coupling.right === m ? 'left' : undefined
      if (axis === undefined) return []
      // a cold setting that is used stands for growth across the train: what is not applied there cannot err there
      if (quantity !== 'axial' && coupling.setting?.used === true) return []
      const errs = parts.some(({ points }) =>
        points.some((point) => point.axes.includes(axis) && error(point) !== 0),
      )
      if (!errs) return []
      const by = grownBy(coupling, axis, quantity, errorLine(parts, axis, error))
      return [{ coupling: c, state, by }]
    }),
  )
}

/** What growth of the axis on one side of a coupling does to it: the right one counts as it is, the left one against. */
function grownBy(
  coupling: Coupling,
  axis: 'left' | 'right',
  quantity: GrowthQuantity,
  line: Line,
): CouplingMotion {
  const sign = axis === 'left' ? 1 : -1
  const still = { y: 0, sy: 0, z: 0, sz: 0 }
  const offset = sign * lineValueAt(line, coupling.mid)
  const slope = sign * line.slope
  switch (quantity) {
    case 'rise':
      return { misalignment: { ...still, z: offset, sz: slope }, gap: 0 }
    case 'side':
      return { misalignment: { ...still, y: offset, sy: slope }, gap: 0 }
    case 'axial': {
      const plane = axis === 'left' ? coupling.q : coupling.p
      return { misalignment: still, gap: sign * lineValueAt(line, plane) }
    }
  }
}
