import { axisOf } from '../motion'
import { midSpan } from '../reading'
import { carriedBy, type Motion, type Standing } from './bodies'
import { placeOf, shaftEnds, type Joint, type Part } from './joints'
import type { Effect } from './source'

/** What a small motion of one body adds to the five numbers of every joint. */
export function carriage(joints: readonly Joint[], standing: Standing, m: Motion): Effect[] {
  return joints.flatMap((joint) =>
    shaftEnds(joint).flatMap(({ machine, axis, plane, sign }) => {
      const rides = standing.carries.find((carried) => carried.machine === machine)
      if (!rides) return []
      const { y, z } = axisOf(machine, axis)
      const at = (x: number) => carriedBy(m, standing, { x, y, z: z + rides.base })
      const middle = at(midSpan(joint.c))
      const to = (part: Part, by: number) => ({ to: placeOf(joint, part), by: sign * by })
      return [
        to('y', middle.y),
        to('z', middle.z),
        to('slopeY', m.sy),
        to('slopeZ', m.sz),
        to('gap', at(plane).x),
      ]
    }),
  )
}
