import { fineSign } from '../../mechanics/units'
import { footLimitWords } from '../../language/footLimitWords'
import { limitSides } from '../../mechanics/footLimits'
import { keptInWords } from '../../language/keptWords'
import { keepsRoom } from '../../mechanics/uncertainty/kept'
import type { Train } from '../../mechanics/train'
import type { Meaning } from './program'

/** The physical fact of a row, for the comment above its group. */
export function factInWords(train: Train, meaning: Meaning): string {
  const body = 'body' in meaning ? (train.bodies[meaning.body]?.name ?? '') : ''
  if ('foot' in meaning && meaning.fact !== 'shim')
    return `${body}: ${footLimitWords[limitSides[meaning.fact].upper].program}`
  switch (meaning.fact) {
    case 'tilt':
      return `${body}: pitch from where it lies, as the rise it makes at the outermost foot`
    case 'restraint':
      return `${body}: how far its points may be carried (a skid under it included)`
    case 'shim':
      return `${body}: rise of a foot = add - remove`
    case 'slide':
      return `${body}: slide of a row of feet = to_3 - to_9`
    case 'axial':
      return `${body}: move along the train = right - left`
    case 'least': {
      const coupling = train.couplings[meaning.coupling]
      const state = train.states[meaning.state]
      return `${coupling?.name ?? ''}, ${state?.name ?? ''}: teeth kept off dead straight by the least angle, on the side that was chosen`
    }
    case 'tolerance': {
      const coupling = train.couplings[meaning.coupling]
      const state = train.states[meaning.state]
      const shape = meaning.way === 'round' ? ', tangents of the true circles' : ''
      const less = keepsRoom(train) ? ' less the room kept free' : ''
      return `${coupling?.name ?? ''}, ${state?.name ?? ''}: misalignment within share * limit${less}${shape}`
    }
  }
}

/** The comment at the head of an exported program: what it asks, signs and units. */
export function notesOf(train: Train, fine: string): string[] {
  const { three, nine } = train.sides
  return [
    `The least-cost program: its optimum is the least weighted move, in ${fineSign[train.units.fine]}.`,
    `Every column but share is a displacement in ${fine}; share is the part of each tolerance used.`,
    'rise, slide, axial: how far a body moves at the mean x of its feet. Up is +; to the right',
    "along the train is +; sideways + is toward 3 o'clock" + nameOfSide(three, "3 o'clock") + ',',
    "- toward 9 o'clock" + nameOfSide(nine, "9 o'clock") + '.',
    `pitch, yaw, roll: turns, as ${fine} of displacement at the outermost foot of the body.`,
    'add, remove, to_3, to_9, right, left: what is paid for, never below 0.',
    'Rows of flex planes, angles and tilt are multiplied by a length, so that they are displacements',
    'too. Circles (bolt in hole, round tolerances) stand as tangents, so this program allows a little',
    'more than the train does: its optimum is a lower bound.',
    ...(keepsRoom(train)
      ? [`Right-hand sides of tolerances have the room for ${keptInWords(train)} taken off.`]
      : []),
    ...train.bodies
      .filter(({ id, name }) => id !== name)
      .map(({ id, name, held }) => `${id}: ${name}${held ? ', held' : ''}`),
    ...train.couplings
      .filter(({ id, name }) => id !== name)
      .map(({ id, name }) => `${id}: ${name}`),
  ]
}

const nameOfSide = (name: string, hour: string): string => (name.includes(hour) ? '' : ` (${name})`)
