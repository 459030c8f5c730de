import { tol } from '../../../mechanics/tolerances'
import type { Frame } from '../frame'
import { combine, constant } from '../affine'
import { programUnit, type Circle } from '../program'
import { holeRadius } from '../../../mechanics/holeRadius'

/** Bolt in hole: the hole centre, carried by the foot, stays within a circle around the bolt. */
export function holeCircles(frame: Frame): Circle[] {
  const { reserve } = frame.train.plan
  return frame.train.bodies.flatMap((body, b) =>
    body.feet.flatMap((foot, f) => {
      const { hole } = foot
      if (!hole) return []
      const point = { x: foot.x, y: foot.y, z: 0 }
      const centre = (way: 'dx' | 'dy', now: number) =>
        combine([1, constant(now / programUnit)], [1, frame.displacement(b, point, way, 'own')])
      const [u, w] = [centre('dx', hole.x), centre('dy', hole.y)]
      if (u.terms.size === 0 && w.terms.size === 0) return []
      return [
        {
          name: `hole ${body.id} ${foot.id}`,
          u,
          w,
          radius: constant(holeRadius(hole, reserve) / programUnit),
          slack: tol.holeSlack / programUnit,
          meaning: { fact: 'hole' as const, body: b, foot: f },
        },
      ]
    }),
  )
}
