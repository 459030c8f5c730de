import { asFound, type AsFound } from '../readings/asFound'
import type { Train } from '../train'
import { numbersOf, type ErrorSource } from './errorSource'
import { readingErrors } from './readingErrors'
import { withSurveys, type ReadLines } from './withSurveys'

/** The couplings as readings and the surveys that join them give them. */
interface FoundLines {
  readonly read: ReadLines
  readonly lines: readonly AsFound[]
  readonly sources: readonly ErrorSource[]
}

/** The line of every coupling: as its readings give it, or as the least squares of all readings and surveys does. */
export const foundLines = (train: Train): readonly AsFound[] => known(train).lines

/** The same by the readings alone, whatever joins them. */
export const readLines = (train: Train): ReadLines => known(train).read

/** Independent errors of these lines: of what was read, of brackets, and of the surveys that join. */
export const lineErrors = (train: Train): readonly ErrorSource[] => known(train).sources

/** Trains never change, and share their couplings where only the plan is another. */
const memory = new WeakMap<Train['couplings'], { surveys: Train['surveys']; found: FoundLines }>()

function known(train: Train): FoundLines {
  const before = memory.get(train.couplings)
  if (before?.surveys === train.surveys) return before.found
  const found = worked(train)
  memory.set(train.couplings, { surveys: train.surveys, found })
  return found
}

function worked(train: Train): FoundLines {
  const lines = train.couplings.map(asFound)
  const sources = train.couplings.map((coupling, c) => {
    const line = lines[c]
    if (!line) throw new RangeError(`coupling ${coupling.id} was not reduced`)
    return readingErrors(coupling, c, line)
  })
  const errors = sources.map((own) => own.map(({ effects }) => numbersOf(effects)))
  const read = { lines, sources, errors }
  const joining = train.surveys.flatMap(({ joins }, i) => (joins ? [i] : []))
  return joining.length === 0
    ? { read, lines, sources: sources.flat() }
    : { read, ...withSurveys(train, read, joining) }
}
