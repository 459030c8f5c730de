import { lineThrough, lineValueAt } from '../growth'
import type { CouplingMotion } from '../misalignment/shares'
import { growthQuantities, type Coupling, type GrowthQuantity, type Train } from '../train'
import type { Micrometres } from '../units'
import type { ErrorEffect, ErrorSource } from './errorSource'
import { doubtfulGrowth, isShutDown, type DoubtfulGrowth } from './growthPoints'
import { growthShared } from './usual'

/**
 * Errors of growth: of the variance of every value a part is one error of the machine in a direction, for all its points
 * and states, with the sign of the value (a machine that grows more than figured does so everywhere); the rest is one
 * error a point, state and direction. They go through the same least-squares line as the values.
 * @param counts whether the error of a value counts; where not, the value still takes part in its line
 */
export function growthErrors(
  train: Train,
  counts: (point: DoubtfulGrowth) => boolean = () => true,
): ErrorSource[] {
  return train.machines.flatMap((machine, m) =>
    growthQuantities.flatMap((quantity) => {
      const states = train.states.map(({ id }) =>
        isShutDown(train, id)
          ? []
          : doubtfulGrowth(train, m, id, quantity).map((point) =>
              counts(point) ? point : { ...point, u: 0 },
            ),
      )
      const group = { kind: 'growth' as const, machine: m }
      const shared = states.flatMap((points, state) =>
        effectsOf(
          train,
          m,
          state,
          quantity,
          points,
          ({ u, value }) => (value < 0 ? -u : u) * Math.sqrt(growthShared),
        ),
      )
      const apart = states.flatMap((points, state) =>
        points.map((point) => ({
          key: `${quantity} of ${machine.id} in ${train.states[state]?.id ?? ''}, ${point.key}`,
          group,
          effects: effectsOf(train, m, state, quantity, points, (one) =>
            one === point ? one.u * Math.sqrt(1 - growthShared) : 0,
          ),
        })),
      )
      const all = [{ key: `${quantity} of ${machine.id}`, group, effects: shared }, ...apart]
      return all.filter(({ effects }) => effects.length > 0)
    }),
  )
}

/**
 * What errors at the points of a machine in a state do to its couplings.
 * @param error of each point (um)
 */
export function effectsOf(
  train: Train,
  m: number,
  state: number,
  quantity: GrowthQuantity,
  points: readonly DoubtfulGrowth[],
  error: (point: DoubtfulGrowth) => Micrometres,
): ErrorEffect[] {
  return train.couplings.flatMap((coupling, c): ErrorEffect[] => {
    const axis = coupling.left === m ? 'right' : coupling.right === m ? 'left' : undefined
    if (axis === undefined) return []
    // a cold setting that is used stands for growth across the train: what is not applied there cannot err there
    if (quantity !== 'axial' && coupling.setting?.used === true) return []
    const here = points.filter(({ axes }) => axes.includes(axis))
    const values = here.map((point) => ({ x: point.x, value: error(point) }))
    if (values.every(({ value }) => value === 0)) return []
    const line = lineThrough(values)
    return [{ coupling: c, state, by: grownBy(coupling, axis, quantity, line) }]
  })
}

/** What growth of the axis on one side of a coupling does to it: the right one counts as it is, the left one against. */
function grownBy(
  coupling: Coupling,
  axis: 'left' | 'right',
  quantity: GrowthQuantity,
  line: ReturnType<typeof lineThrough>,
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
