import { numberColumns, type PathColumn } from './pathColumns'

/** A column of the tables of machines and of skids. */
export interface BodyColumn extends PathColumn {
  /** What a yes or no is where a file says nothing. */
  readonly instead?: boolean
}

const number = numberColumns('machines')
const yes = (heading: string, instead: boolean, ...path: string[]): BodyColumn => ({
  key: path.join('.'),
  heading,
  names: [],
  kind: 'yes',
  path,
  instead,
})

/** Whether a body is fixed, and why it may never be let go. */
export const fixedColumns: readonly BodyColumn[] = [
  yes('fixed', false, 'held'),
  {
    key: 'anchored',
    heading: 'anchored, because',
    names: ['anchored'],
    kind: 'text',
    path: ['anchored'],
  },
  number('effort', [], 'effort'),
]

/** What a move of a body weighs in the cost, how far it may be pitched, what it is lifted by. */
export const liftColumns: readonly BodyColumn[] = [
  number('weight in the cost', ['weight'], 'weight'),
  number('tilt at most', ['tilt'], 'tilt'),
  number('mass', [], 'mass'),
  number('one jack carries', ['jack'], 'jack'),
  number('slope as found', ['slope'], 'level'),
]

/** What a body that is not fixed may do. */
export const freeColumns: readonly BodyColumn[] = [
  yes('shim', true, 'free', 'shim'),
  yes('slide', true, 'free', 'side'),
  yes('along', false, 'free', 'axial'),
  yes('roll', false, 'free', 'roll'),
]

/** What is no number below 0. */
export const bodyAmounts = ['effort', 'weight', 'tilt', 'mass', 'jack']
