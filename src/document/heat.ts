import type { Micrometres } from '../mechanics/units'
import { tol } from '../mechanics/tolerances'
import { placeOf, type Refusal } from './refusal'
import type { GrowthPointDocument, TrainDocument } from './schema'

/**
 * Growth from temperatures: height (mm) times expansion (1e-6 per degree) times the difference, which
 * is the same in both units of temperature.
 */
export const heatRise = (heat: NonNullable<GrowthPointDocument['heat']>): Micrometres =>
  heat.height * heat.expansion * 1e-3 * (heat.to - heat.from)

/** Refuses growth from temperatures of over 1 m, in a document in engine units. */
export const absurdHeat = ({ machines }: TrainDocument): Refusal[] =>
  machines.flatMap(({ growth = {} }, m) =>
    Object.entries(growth).flatMap(([state, points]) =>
      points.flatMap(({ heat }, i): Refusal[] => {
        const rise = heat ? heatRise(heat) : 0
        if (Math.abs(rise) <= tol.largestFine) return []
        return [
          {
            at: placeOf(['machines', m, 'growth', state, i, 'heat']),
            why: `${Number.isFinite(rise) ? `${rise / 1000} mm of growth` : 'growth of these'} is over 1 m: check height, expansion (1e-6 per degree) and temperatures`,
          },
        ]
      }),
    ),
  )
