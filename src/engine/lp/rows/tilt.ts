import { type Frame, rowOf } from '../frame'
import { combine } from '../affine'
import { programUnit, type Row } from '../program'

/** Most a body may be pitched from where it lies, its own pitch plus its skid's. */
export function tiltRows(frame: Frame): Row[] {
  return frame.train.bodies.flatMap((body, b) => {
    if (body.tilt === undefined) return []
    const reach = Math.max(1, ...body.feet.map((foot) => Math.abs(foot.x - body.x0)))
    const limit = (body.tilt * reach) / programUnit
    const row = rowOf(`tilt ${body.id}`, combine([reach, frame.slope(b, 'sz')]), -limit, limit, {
      fact: 'tilt',
      body: b,
    })
    return row ? [row] : []
  })
}
