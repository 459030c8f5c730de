import { type Frame, rowOf } from '../frame'
import type { Row } from '../program'

/** Keyed and dowelled feet: one that cannot be shimmed keeps its height, one that cannot slide its side. */
export function keyRows(frame: Frame): Row[] {
  return frame.train.bodies.flatMap((body, b) =>
    body.feet.flatMap((foot, f) => {
      const point = { x: foot.x, y: foot.y, z: 0 }
      const fixed = (way: 'dy' | 'dz', fact: 'side key' | 'shim key') =>
        rowOf(`${fact} ${body.id} ${foot.id}`, frame.displacement(b, point, way, 'own'), 0, 0, {
          fact,
          body: b,
          foot: f,
        })
      return [
        foot.mayShim ? undefined : fixed('dz', 'shim key'),
        foot.maySlide ? undefined : fixed('dy', 'side key'),
      ].filter((row) => row !== undefined)
    }),
  )
}
