import type { Micrometres, Millimetres } from '../mechanics/units'
import type { Train } from '../mechanics/train'
import { shaftEnds } from '../mechanics/shaftEnds'
import { lineErrors } from '../mechanics/uncertainty/foundLines'
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
 * Every coupling between the zero and a machine adds what its line is unsure by, carried along x: of each independent
 * error the sum of offset + slope*(x - mid-span) over the couplings on the way, and of these the root of the sum of
 * squares. An error may reach several couplings, where a survey joins them. Empty where the zero is no machine's axis.
 */
export function driftOf(train: Train, zero: Zero): Drift[] {
  const from = zero.machine
  if (from === undefined) return []
  return train.machines.map((_, m) => {
    const [a, b] = shaftEnds(train, m)
    const between = ({ coupling }: { readonly coupling: number }) =>
      coupling >= Math.min(m, from) && coupling < Math.max(m, from)
    const errors = lineErrors(train).map(({ effects }) => effects.filter(between))
    const unsure = (x: Millimetres, way: 'y' | 'z'): Micrometres =>
      Math.hypot(
        ...errors.map((effects) =>
          effects.reduce((sum, { coupling, by: { misalignment } }) => {
            const arm = x - (train.couplings[coupling]?.mid ?? 0)
            return sum + misalignment[way] + arm * misalignment[way === 'y' ? 'sy' : 'sz']
          }, 0),
        ),
      )
    return {
      machine: m,
      points: [a, (a + b) / 2, b].map((x, i) => {
        const cold = { rise: unsure(x, 'z'), side: unsure(x, 'y') }
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
