import { type Frame, rowOf } from '../frame'
import { programUnit, type Row } from '../program'

const ways = { axial: 'dx', side: 'dy', rise: 'dz' } as const

/** How far a point of a body, such as a nozzle, may be carried; its skid's motion counts too. */
export function restraintRows(frame: Frame): Row[] {
  return frame.train.bodies.flatMap((body, b) =>
    body.restraints.flatMap((restraint, r) =>
      (['axial', 'side', 'rise'] as const).flatMap((way) => {
        const range = restraint[way]
        if (!range) return []
        const carried = frame.displacement(b, restraint, ways[way], 'all')
        const row = rowOf(
          `restraint ${body.id} ${restraint.id} ${way}`,
          carried,
          range[0] / programUnit,
          range[1] / programUnit,
          { fact: 'restraint', body: b, restraint: r, way },
        )
        return row ? [row] : []
      }),
    ),
  )
}
