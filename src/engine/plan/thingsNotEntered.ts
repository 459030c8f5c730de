import type { Body, Train } from '../../mechanics/train'
import type { NotEntered } from './answer'
import { everyMachineIn } from './notEntered'

/**
 * How many things were not entered. A line of the list may stand for several, and each is counted from the start: who
 * enters one of them would else see the count grow, and never know how far there is to go.
 */
export function thingsNotEntered(train: Train, list: readonly NotEntered[]): number {
  return list.length + ofEveryMachine(train, list) + behindHoles(train) + behindGaps(train)
}

/** A state in which no machine has growth is one line. */
function ofEveryMachine({ states, machines }: Train, list: readonly NotEntered[]): number {
  const lines = new Set(list.map(({ what }) => what))
  const whole = states.filter(({ name }) => lines.has(everyMachineIn(name)))
  return whole.length * (machines.length - 1)
}

/** Once a hole is entered it is asked where its bolt stands, and how much room is to be kept to it. */
function behindHoles({ bodies, plan }: Train): number {
  const moved = bodies.filter(({ held }) => !held)
  const lacking = moved.filter(lacksHole)
  const withoutPlace = lacking.filter(
    ({ feet }) => !feet.some(({ hole }) => hole?.centred === false),
  ).length
  const someHole = moved.some(({ feet }) => feet.some(({ hole }) => hole))
  return withoutPlace + (lacking.length > 0 && !someHole && plan.reserve === 0 ? 1 : 0)
}

const lacksHole = ({ may, feet }: Body): boolean =>
  (may.slide || may.axial) && feet.some(({ maySlide, hole }) => maySlide && !hole)

/** Once a gap is entered, float and magnetic centre of its rotors and the stretch of its coupling are asked for. */
const behindGaps = ({ couplings }: Train): number =>
  2 * couplings.filter(({ axial }) => axial === undefined).length
