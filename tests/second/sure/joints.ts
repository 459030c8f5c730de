import type { Coupling, Machine, State, Train } from '../train'
import { statesOf } from '../train'

/** The five numbers that every check of a coupling in a state is made of: um and mrad at mid-span, um along. */
export const parts = ['y', 'z', 'slopeY', 'slopeZ', 'gap'] as const
export type Part = (typeof parts)[number]

/** One coupling in one state: the place of its five numbers among all. */
export interface Joint {
  c: Coupling
  state: State
  left: Machine
  right: Machine
  /** Where the first of its five numbers stands. */
  first: number
}

/** Where one of the five numbers of a joint stands. */
export const placeOf = (joint: Joint, part: Part): number => joint.first + parts.indexOf(part)

/** Every coupling in every state (a train in mm and um). */
export function jointsOf(train: Train): Joint[] {
  const machine = (id: string): Machine => {
    const found = train.machines.find((m) => m.id === id)
    if (!found) throw new Error(`no machine ${id}`)
    return found
  }
  return train.couplings
    .flatMap((c) => statesOf(train).map((state) => ({ c, state })))
    .map(({ c, state }, i) => ({
      c,
      state,
      left: machine(c.left.machine),
      right: machine(c.right.machine),
      first: i * parts.length,
    }))
}

/** The two shaft ends that meet at a coupling: whose, on which axis, at which plane, and with which sign it counts. */
export function shaftEnds({ c, left, right }: Pick<Joint, 'c' | 'left' | 'right'>) {
  return [
    { machine: left, axis: 'right', plane: c.left.plane, sign: -1 },
    { machine: right, axis: 'left', plane: c.right.plane, sign: 1 },
  ] as const
}
