import type { Micrometres } from '../units/units'
import type { Coupling, Train } from '../train/model'
import { growthOf, valueAt } from '../growth/growth'
import type { Misalignment } from '../readings/equation'

/** What a state does to a coupling, before anything is moved: growth less what is aimed at. */
export interface StateShift {
  readonly misalignment: Misalignment
  /** Change of the gap between the shaft ends. */
  readonly gap: Micrometres
}

/** Right machine's growth against the left one's at mid-span, less the aim of that state. */
export function stateShift(train: Train, coupling: Coupling, state: string): StateShift {
  const left = train.machines[coupling.left]
  const right = train.machines[coupling.right]
  if (!left || !right) throw new RangeError(`coupling ${coupling.id} joins no machines`)
  const a = growthOf(left, state, 'right')
  const b = growthOf(right, state, 'left')
  const aim = coupling.aim.get(state) ?? { y: 0, z: 0, sy: 0, sz: 0 }
  const { mid } = coupling
  return {
    misalignment: {
      y: valueAt(b.side, mid) - valueAt(a.side, mid) - aim.y,
      z: valueAt(b.rise, mid) - valueAt(a.rise, mid) - aim.z,
      sy: b.side.slope - a.side.slope - aim.sy,
      sz: b.rise.slope - a.rise.slope - aim.sz,
    },
    gap: valueAt(b.axial, coupling.q) - valueAt(a.axial, coupling.p),
  }
}

export const addMisalignments = (a: Misalignment, b: Misalignment): Misalignment => ({
  y: a.y + b.y,
  z: a.z + b.z,
  sy: a.sy + b.sy,
  sz: a.sz + b.sz,
})
