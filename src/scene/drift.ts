import type { Micrometres, Millimetres } from '../mechanics/units'
import type { Train } from '../mechanics/train'
import type { AsFound } from '../mechanics/readings/asFound'
import { shaftEnds } from '../mechanics/shaftEnds'
import { growthDoubtAt } from '../mechanics/uncertainty/growthPoints'
import type { Zero } from './zero'

/** How surely a machine's line as found is known against the zero: one standard uncertainty. */
export interface Drift {
  readonly machine: number
  readonly points: readonly {
    readonly x: Millimetres
    readonly rise: Micrometres
    readonly side: Micrometres
    /** The same with growth, in the order of `train.states`. */
    readonly grown: readonly Ways[]
  }[]
}

interface Ways {
  readonly rise: Micrometres
  readonly side: Micrometres
}

/**
 * Every coupling between the zero and a machine adds what its readings leave unsure, carried along
 * x: variance of offset + slope*(x - mid-span), summed over the couplings on the way. Empty where
 * the zero is no machine's axis.
 */
export function driftOf(train: Train, found: readonly AsFound[], zero: Zero): Drift[] {
  const from = zero.machine
  if (from === undefined) return []
  return train.machines.map((_, m) => {
    const [a, b] = shaftEnds(train, m)
    const between = train.couplings.flatMap(({ mid }, c) => {
      const covariance = found[c]?.covariance
      return covariance && c >= Math.min(m, from) && c < Math.max(m, from)
        ? [{ mid, covariance }]
        : []
    })
    const unsure = (x: Millimetres, first: 0 | 2): Micrometres =>
      Math.sqrt(
        between.reduce((sum, { mid, covariance }) => {
          const entry = (i: number, j: number) => covariance[i]?.[j] ?? 0
          const arm = x - mid
          return (
            sum +
            entry(first, first) +
            2 * arm * entry(first, first + 1) +
            arm * arm * entry(first + 1, first + 1)
          )
        }, 0),
      )
    return {
      machine: m,
      points: [a, (a + b) / 2, b].map((x, i) => {
        const cold = { rise: unsure(x, 2), side: unsure(x, 0) }
        const axis = i === 0 ? 'left' : 'right'
        const hot = (state: string, way: 'rise' | 'side') =>
          Math.hypot(cold[way], growthDoubtAt(train, m, state, axis, way, x))
        return {
          x,
          ...cold,
          grown: train.states.map(({ id }) => ({ rise: hot(id, 'rise'), side: hot(id, 'side') })),
        }
      }),
    }
  })
}
