import { type Frame, rowOf } from '../frame'
import { programUnit, type Row } from '../program'
import { packRange } from '../../../mechanics/packRange'

/** Shim pack under each foot: minimum <= pack now + change <= maximum. */
export function packRows(frame: Frame): Row[] {
  return frame.train.bodies.flatMap((body, b) =>
    body.feet.flatMap((foot, f) => {
      if (!foot.pack) return []
      const [down, up] = packRange(foot.pack)
      const dz = frame.displacement(b, { x: foot.x, y: foot.y, z: 0 }, 'dz', 'own')
      const row = rowOf(`pack ${body.id} ${foot.id}`, dz, down / programUnit, up / programUnit, {
        fact: 'pack',
        body: b,
        foot: f,
      })
      return row ? [row] : []
    }),
  )
}
