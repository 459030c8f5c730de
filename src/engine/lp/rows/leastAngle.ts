import { runningLine, toothAngle, toothMeshes } from '../../../mechanics/misalignment/gearTeeth'
import { combine, constant } from '../affine'
import { rowOf, type Frame } from '../frame'
import { programUnit, type Row } from '../program'
import { couplingMotion } from './tolerance'

/**
 * The angle at the teeth of gear couplings, kept off nought on the sides that were chosen: sign * angle >= least. That
 * the length of the angle is at least so much is no linear limit; this is one of the half-planes in which it holds.
 */
export function leastAngleRows(frame: Frame): Row[] {
  const { train, found } = frame
  return train.couplings.flatMap((coupling, c) => {
    const { least, sides = [] } = coupling.gear ?? {}
    const line = found[c]?.line
    if (least === undefined || sides.length === 0 || !line) return []
    const motion = couplingMotion(frame, coupling)
    const meshes = toothMeshes(coupling)
    return sides.flatMap(({ state, place, way, sign }): Row[] => {
      const mesh = meshes.find((one) => one.place === place)
      const s = train.states.findIndex(({ id }) => id === state)
      if (!mesh || s < 0) return []
      const { lever } = mesh
      const now = toothAngle(mesh, runningLine(train, coupling, state, line))[way]
      const turned = way === 'y' ? motion.sy : motion.sz
      const angle = combine(
        [sign, constant((now * lever) / programUnit)],
        [sign * mesh.offset * lever, motion[way]],
        [sign * mesh.slope * lever, turned],
      )
      const row = rowOf(
        `least ${place} ${coupling.id} ${state} ${way === 'y' ? 'side' : 'rise'}`,
        angle,
        (least * lever) / programUnit,
        Infinity,
        { fact: 'least', coupling: c, state: s, what: place, way },
      )
      return row ? [row] : []
    })
  })
}
