import type { CouplingMotion } from '../misalignment/shares'
import { growthQuantities, type Train } from '../train'
import { effectsOf } from './growthErrors'
import { doubtfulStates, doubtfulPointsOf } from './growthPoints'

/** What the half width of one interval of growth does to a coupling in a state. */
export interface IntervalEffect {
  readonly coupling: number
  readonly state: number
  /** um, mrad, and um of the gap. */
  readonly by: CouplingMotion
}

/**
 * Every growth value that is given as an interval, as what half its width does to the couplings through the line that
 * its machine's points make. A cold setting that is used stands in place of growth across the train, so that no value
 * of the interval changes anything there but the gap.
 */
export const intervalEffects = (train: Train): IntervalEffect[] =>
  train.machines.flatMap((_, m) =>
    growthQuantities.flatMap((quantity) => {
      const states = doubtfulStates(train, m, quantity)
      return doubtfulPointsOf(states).flatMap((point): IntervalEffect[] => {
        if (point.by !== 'interval') return []
        const effects = effectsOf(train, m, quantity, states, (one) =>
          // u of an interval is its half width over the root of 3
          one.key === point.key ? one.u * Math.sqrt(3) : 0,
        )
        return effects.map(({ coupling, state, by }) => ({
          coupling,
          state,
          by: train.couplings[coupling]?.setting?.used === true ? gapAlone(by) : by,
        }))
      })
    }),
  )

const gapAlone = ({ gap }: CouplingMotion): CouplingMotion => ({
  misalignment: { y: 0, sy: 0, z: 0, sz: 0 },
  gap,
})
