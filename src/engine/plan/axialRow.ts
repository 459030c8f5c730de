import { carriedRotor, centresOpen, thrustFloat, type AxialGap } from '../../mechanics/axial'
import { judgedStates } from '../../mechanics/engaged'
import { growthOf, lineValueAt } from '../../mechanics/growth'
import { couplingMotions, movedBy } from '../../mechanics/misalignment/couplingMotion'
import { stateShift } from '../../mechanics/misalignment/stateShift'
import type { Motion } from '../../mechanics/motion'
import type { Coupling, State, Train } from '../../mechanics/train'
import type {
  AxialAnswer,
  AxialCouplingAnswer,
  AxialRoom,
  AxialStateAnswer,
  EndwiseAnswer,
} from './axialAnswer'

/**
 * Shaft-end gaps, rotors and stretch through the train, cold and in every state.
 * @param motions own motions of the bodies (um, mrad); none: as found
 * @returns undefined where no gap was entered
 */
export function axialRow(train: Train, motions?: readonly Motion[]): AxialAnswer | undefined {
  if (train.couplings.every(({ axial }) => axial === undefined)) return undefined
  const moved = motions && couplingMotions(train, motions)
  return {
    machines: train.machines.map((_, m) => endwise(train, m, motions)),
    couplings: train.couplings.flatMap((coupling, c) =>
      coupling.axial ? [alongOf(train, coupling, coupling.axial, moved?.[c]?.gap)] : [],
    ),
  }
}

/** The same as part of an answer. */
export function axialAnswer(train: Train, motions?: readonly Motion[]): { axial?: AxialAnswer } {
  const axial = axialRow(train, motions)
  return axial ? { axial } : {}
}

function endwise(train: Train, m: number, motions?: readonly Motion[]): EndwiseAnswer {
  const machine = train.machines[m]
  if (!machine) throw new RangeError(`no machine ${m}`)
  // the coupling at the left end of a machine has it at its right
  const planes = {
    left: train.couplings.find(({ right }) => right === m)?.q,
    right: train.couplings.find(({ left }) => left === m)?.p,
  }
  const at = (end: 'left' | 'right') =>
    movedBy(train, motions ?? [], m, { x: planes[end] ?? machine.x0, ...machine.axis[end] }).x
  const feet = [m, ...(machine.skid === undefined ? [] : [machine.skid])].reduce(
    (sum, body) => sum + (motions?.[body]?.tx ?? 0),
    0,
  )
  return {
    machine: machine.id,
    ...(motions && { moves: { feet, left: at('left'), right: at('right') } }),
    grows: train.states.map(({ id: state }) => {
      const grown = (end: 'left' | 'right') =>
        planes[end] === undefined
          ? {}
          : { [end]: lineValueAt(growthOf(machine, state, end).axial, planes[end]) }
      return { state, ...grown('left'), ...grown('right') }
    }),
  }
}

function alongOf(
  train: Train,
  coupling: Coupling,
  axial: AxialGap,
  opened: number | undefined,
): AxialCouplingAnswer {
  const { found, want, tolerance } = axial
  const cold = found + (opened ?? 0) / 1000
  return {
    coupling: coupling.id,
    found,
    ...(opened !== undefined && { planned: cold }),
    ...{ want, tolerance },
    states: judgedStates(train, coupling).map(({ state }) =>
      inState(axial, state, cold + stateShift(train, coupling, state.id).gap / 1000),
    ),
  }
}

/** @param measured the gap in that state, rotors where they lay when it was found */
function inState(axial: AxialGap, state: State, measured: number): AxialStateAnswer {
  const { want, tolerance, stretch, rotors } = axial
  const gap = measured + centresOpen(axial)
  const [left, right] = [thrustFloat(rotors.left), thrustFloat(rotors.right)]
  const off = gap - want
  const side = carriedRotor(axial)
  const rotor = side && rotors[side]
  // where the rotor goes while the coupling keeps its own length
  const carried =
    side === 'left'
      ? { from: measured - want + right[0], to: measured - want + right[1] }
      : { from: want - measured + left[0], to: want - measured + left[1] }
  return {
    state: state.id,
    gap,
    left: tolerance * state.factor - Math.abs(off),
    ...(stretch && {
      stretch: roomIn({ from: off + right[0] - left[1], to: off + right[1] - left[0] }, stretch),
    }),
    ...(side &&
      rotor?.float && {
        rotor: { side, centre: rotor.centre ?? 0, ...roomIn(carried, rotor.float) },
      }),
  }
}

const roomIn = (
  { from, to }: { from: number; to: number },
  [low, high]: readonly [number, number],
): AxialRoom => ({ from, to, low, high, left: Math.min(from - low, high - to) })
