import { madeOf } from '../growth'
import { midSpan } from '../reading'
import { statesOf, type Machine, type Train } from '../train'
import { knownOf, shutDown, type Direction, type Known } from './growthPoints'
import { placeOf, shaftEnds, type Joint } from './joints'
import type { Effect } from './source'
import { straight } from './straight'

/** One point of growth that a joint feels, and what 1 um of it does there. */
interface Influence {
  machine: Machine
  direction: Direction
  known: Known
  effects: Effect[]
}

const directions: readonly Direction[] = ['rise', 'side', 'axial']

/** Every point of growth that a coupling feels in a state, be it one of another state. */
export function influences(train: Train, joint: Joint): Influence[] {
  const { c, state } = joint
  const middle = midSpan(c)
  return shaftEnds(joint).flatMap(({ machine, axis, plane, sign: direct }) =>
    madeOf(statesOf(train), machine, state.id).flatMap(([own, part]) => {
      if (shutDown(train, own)) return []
      const sign = direct * part
      return directions.flatMap((direction) => {
        // a cold setting that is used has in it what the shafts do across the train
        if (direction !== 'axial' && c.setting?.use === true) return []
        const all = knownOf(train, machine, axis, own, direction)
        const line = straight(all.map(({ at }) => at))
        const [atMiddle, atPlane] = [line.at(middle), line.at(plane)]
        return all.map((known, i): Influence => {
          const along = [{ to: placeOf(joint, 'gap'), by: sign * (atPlane[i] ?? 0) }]
          const up = direction === 'rise'
          const across = [
            { to: placeOf(joint, up ? 'z' : 'y'), by: sign * (atMiddle[i] ?? 0) },
            { to: placeOf(joint, up ? 'slopeZ' : 'slopeY'), by: sign * (line.slope[i] ?? 0) },
          ]
          return { machine, direction, known, effects: direction === 'axial' ? along : across }
        })
      })
    }),
  )
}
