import type { Micrometres } from '../units'
import type { Coupling, Train } from '../train'
import { growthOf, lineValueAt } from '../growth'
import type { Misalignment } from '../readings/equation'

/**
 * What a state does to a coupling, before anything is moved: growth less what is aimed at, or, where
 * the maker's cold setting is used, that setting taken off and nothing else.
 */
export interface StateShift {
  readonly misalignment: Misalignment
  /** Change of the gap between the shaft ends. */
  readonly gap: Micrometres
}

/**
 * Right machine's growth against the left one's at mid-span, less the aim of that state. A cold
 * setting has the growth in it already: used, it is taken off alone. Growth along the train counts
 * either way, since a setting says nothing of the gap.
 * @returns um, mrad
 */
export function stateShift(train: Train, coupling: Coupling, state: string): StateShift {
  const { setting } = coupling
  const grown = grownShift(train, coupling, state)
  if (setting?.used !== true) return grown
  const { y, z, sy, sz } = setting
  return { ...grown, misalignment: { y: 0 - y, z: 0 - z, sy: 0 - sy, sz: 0 - sz } }
}

/**
 * What growth and aim ask for, whether or not the maker's cold setting stands for them.
 * @returns um, mrad
 */
export function grownShift(train: Train, coupling: Coupling, state: string): StateShift {
  const left = train.machines[coupling.left]
  const right = train.machines[coupling.right]
  if (!left || !right) throw new RangeError(`coupling ${coupling.id} joins no machines`)
  const a = growthOf(left, state, 'right')
  const b = growthOf(right, state, 'left')
  const aim = coupling.aim.get(state) ?? { y: 0, z: 0, sy: 0, sz: 0 }
  const { mid } = coupling
  return {
    misalignment: {
      y: lineValueAt(b.side, mid) - lineValueAt(a.side, mid) - aim.y,
      z: lineValueAt(b.rise, mid) - lineValueAt(a.rise, mid) - aim.z,
      sy: b.side.slope - a.side.slope - aim.sy,
      sz: b.rise.slope - a.rise.slope - aim.sz,
    },
    gap: lineValueAt(b.axial, coupling.q) - lineValueAt(a.axial, coupling.p),
  }
}

/** Sum of two misalignments (um, mrad). */
export const addMisalignments = (a: Misalignment, b: Misalignment): Misalignment => ({
  y: a.y + b.y,
  z: a.z + b.z,
  sy: a.sy + b.sy,
  sz: a.sz + b.sz,
})
