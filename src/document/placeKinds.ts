import type { NumberFound } from './numbers'
import type { Path } from './place'

/** A number of a document as it was typed, in the document's own units. */
export type Typed = Pick<NumberFound, 'value' | 'quantity' | 'path'>

/** A value in words, and what it is beyond. */
export interface Beyond {
  /** With its unit, the one in which it shows best what it is: "12.7 mm at the dial", "600.6 m". */
  readonly said: string
  /** "more than 10 mm" */
  readonly beyond: string
}

/** What was read at an hour, when the train was found or again after the work; the hour itself is none. */
export const isReading = (path: Path): boolean =>
  path.at(-3) === 'readings' && path.at(-1) === 1 && (path.includes('found') || isAgain(path))

export const isAgain = (path: Path): boolean => path[0] === 'record' && path[1] === 'again'

/** Written down at the machine: what was done at a foot, what its dials showed, a gap between shaft ends. */
const isDone = (path: Path): boolean =>
  path[0] === 'record' && (path[1] === 'work' || path[1] === 'gaps')

/** In a part that the file leaves open, and typed by somebody: pipe strain, what was read again, what was done. */
export const isTypedOpen = (path: Path): boolean =>
  path[0] === 'couplings' || isAgain(path) || isDone(path)

/** A place along the train, from any origin. */
export const isAlong = (path: Path): boolean =>
  (['x', 'at', 'plane'].includes(String(path.at(-1))) && !path.includes('hole')) ||
  path.at(-2) === 'planes'
