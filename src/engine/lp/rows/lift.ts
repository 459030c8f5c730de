import { type Frame, rowOf } from '../frame'
import { programUnit, type Row } from '../program'

/** Most a foot may rise from now: bolt length, thread. A limit already passed becomes "no higher". */
export function liftRows(frame: Frame): Row[] {
  return frame.train.bodies.flatMap((body, b) =>
    body.feet.flatMap((foot, f) => {
      if (foot.lift === undefined) return []
      const dz = frame.displacement(b, { x: foot.x, y: foot.y, z: 0 }, 'dz', 'own')
      const upper = Math.max(0, foot.lift) / programUnit
      const row = rowOf(`lift ${body.id} ${foot.id}`, dz, -Infinity, upper, {
        fact: 'lift',
        body: b,
        foot: f,
      })
      return row ? [row] : []
    }),
  )
}
