import type { ToothPlace } from '../../mechanics/gearCoupling'
import type { Misalignment } from '../../mechanics/readings/equation'
import { tol } from '../../mechanics/tolerances'
import type { Coupling, State, Train } from '../../mechanics/train'
import type { Milliradians } from '../../mechanics/units'
import { apartIn, type Sides } from './couplingsMet'
import type { ClaimedMotion } from './moved'

/** An angle at teeth that a plan promised to keep off nought and does not: by how much it falls short (mrad). */
export interface LeastMissed {
  readonly coupling: string
  readonly state: string
  readonly place: ToothPlace
  readonly by: Milliradians
}

/**
 * Every angle at the teeth of gear couplings that a plan keeps off nought, measured on the shafts as moved: the length of
 * the angle itself, whichever side it was kept on.
 */
export function leastMissed(
  train: Train,
  lines: readonly Misalignment[],
  motions: readonly ClaimedMotion[],
): LeastMissed[] {
  return train.couplings.flatMap((coupling, c) => {
    const { least, sides = [] } = coupling.gear ?? {}
    const line = lines[c]
    if (least === undefined || !line) return []
    return sides.flatMap(({ state: id, place }): LeastMissed[] => {
      const state = train.states.find((one) => one.id === id)
      if (!state) return []
      const { y, z } = angleAt(train, coupling, state, line, motions, place)
      const by = least - Math.sqrt(y * y + z * z)
      return by <= tol.leastAngle ? [] : [{ coupling: coupling.id, state: id, place, by }]
    })
  })
}

/** The angle at a mesh (mrad): of the far shaft over the span, or of one shaft against the other. */
function angleAt(
  train: Train,
  coupling: Coupling,
  state: State,
  line: Misalignment,
  motions: readonly ClaimedMotion[],
  place: ToothPlace,
): Sides {
  const at = apartIn(train, { ...coupling, aim: new Map() }, state, line, motions)
  const { p, q } = coupling
  const [from, to] = { 'left plane': [q, p], 'right plane': [p, q], angle: [0, 0] }[place]
  if (place === 'angle') {
    const [before, after] = [at(p - 500), at(p + 500)]
    return { y: (after.y - before.y) / 1000, z: (after.z - before.z) / 1000 }
  }
  const there = at(from ?? 0)
  const arm = (from ?? 0) - (to ?? 0)
  return { y: there.y / arm, z: there.z / arm }
}
