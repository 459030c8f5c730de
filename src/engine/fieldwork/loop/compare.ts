import { tol } from '../../../mechanics/tolerances'
import { micrometresPer } from '../../../mechanics/units'
import type { Coupling, ReadingSet, Train } from '../../../mechanics/train'
import { asFound, type AsFound } from '../../../mechanics/readings/asFound'
import { undetermined } from '../../../document/undetermined'
import type { Misalignment } from '../../../mechanics/readings/equation'
import type { Motion } from '../../../mechanics/motion'
import { couplingMotions } from '../../../mechanics/misalignment/couplingMotion'
import type { ExpectedAnswer } from '../../plan/answer'
import { expectedAt } from '../steps/judge'
import { judgeDifferences } from './causes'
import { evidenceOf } from './evidence'
import { differenceAt, meaningOf, type DifferenceMeaning } from './meaning'
import { workErrors, workedBy } from '../../../mechanics/uncertainty/workErrors'

/**
 * New readings of one set as they were typed, in the document's units as all that is entered: the same
 * shape as what was expected of it.
 */
export type NewReadings = ExpectedAnswer

/** Expected beside measured, and what the difference means. */
export interface Comparison {
  couplings: CouplingComparison[]
  meaning: DifferenceMeaning
  words: string
}

interface CouplingComparison {
  coupling: string
  sets: SetComparison[]
  /** Measured less expected of the line: right axis against left at mid-span; null where the sets leave it open. */
  line: { offset: { y: number; z: number }; slope: { y: number; z: number } } | null
  meaning: DifferenceMeaning
}

interface SetComparison {
  set: number
  rows: { hour: number; expected: number; measured: number; difference: number }[]
  /** For a set of offsets and slopes: measured less expected. */
  line?: { offset: { y: number; z: number }; slope: { y: number; z: number } }
}

/**
 * Compares new readings with what the sets should show where the bodies were meant to stand.
 * @param found the lines before the moves; @param motions own motions made since then
 * @throws RangeError for a coupling or a set that is not in the train
 */
export function compareReadings(
  train: Train,
  found: readonly AsFound[],
  motions: readonly Motion[],
  measured: readonly NewReadings[],
): Comparison {
  const moved = couplingMotions(train, motions)
  const worked = workErrors(train, workedBy(train, motions))
  const ids = [...new Set(measured.map(({ coupling }) => coupling))]
  const expected = expectedAt(
    train,
    found,
    motions,
    train.couplings.map((_, c) => c),
  )
  const read = measured.map((entry) => inside(train, entry))
  const judged = (some: readonly ExpectedAnswer[]) =>
    judgeDifferences(train, motions, evidenceOf(train, found, worked, expected, some))
  const couplings = ids.map((id): CouplingComparison => {
    const c = train.couplings.findIndex((entry) => entry.id === id)
    const coupling = train.couplings[c]
    const was = found[c]
    const move = moved[c]
    if (!coupling || !was || !move) throw new RangeError(`no coupling ${id}`)
    const here = read.filter((entry) => entry.coupling === id)
    const sets = here.map((entry) => setComparison(expected, entry))
    const now = lineOf(
      train,
      coupling,
      measured.filter((entry) => entry.coupling === id),
    )
    const apart = now && minus(minus(now.line, was.line), move.misalignment)
    return {
      coupling: id,
      sets,
      line: apart ? lineAnswer(apart) : null,
      // who is to blame is told of all couplings together alone: what one shows may be any of many things
      meaning: differenceAt(train, judged(here).differs, mostOf(sets)),
    }
  })
  const meaning = meaningOf(train, judged(read), mostOf(couplings.flatMap(({ sets }) => sets)))
  return { couplings, meaning, words: meaning.words }
}

const mostOf = (sets: readonly SetComparison[]): number => Math.max(0, ...sets.flatMap(largestOf))

function setComparison(expected: readonly ExpectedAnswer[], entry: ExpectedAnswer): SetComparison {
  const should = expected.find(
    ({ coupling, set }) => coupling === entry.coupling && set === entry.set,
  )
  if (!should) throw new RangeError(`no set ${entry.set} at ${entry.coupling}`)
  if ('readings' in entry && 'readings' in should) {
    const rows = entry.readings.flatMap(([hour, value]) => {
      const at = should.readings.find((row) => Math.abs(row[0] - hour) < tol.dust)
      return at ? [{ hour, expected: at[1], measured: value, difference: value - at[1] }] : []
    })
    return { set: entry.set, rows }
  }
  if ('offset' in entry && 'offset' in should)
    return {
      set: entry.set,
      rows: [],
      line: {
        offset: {
          y: entry.offset.y - should.offset.y,
          z: entry.offset.z - should.offset.z,
        },
        slope: { y: entry.slope.y - should.slope.y, z: entry.slope.z - should.slope.z },
      },
    }
  throw new RangeError(`set ${entry.set} of ${entry.coupling} is read in another way`)
}

/** Readings as the engine has them (um, mrad). */
function inside(train: Train, entry: NewReadings): ExpectedAnswer {
  const per = micrometresPer[train.units.fine]
  return 'readings' in entry
    ? { ...entry, readings: entry.readings.map(([hour, value]) => [hour, value * per]) }
    : { ...entry, offset: { y: entry.offset.y * per, z: entry.offset.z * per } }
}

/** The line that new readings alone give; undefined where they leave it open. */
export function lineOf(
  train: Train,
  coupling: Coupling,
  some: readonly NewReadings[],
): AsFound | undefined {
  const found = some.flatMap((typed): ReadingSet[] => {
    const set = coupling.found[typed.set]
    if (!set) return []
    const entry = inside(train, typed)
    if (set.kind === 'line')
      return 'offset' in entry
        ? [{ ...set, used: true, offset: entry.offset, slope: entry.slope }]
        : []
    return 'readings' in entry
      ? [
          {
            ...set,
            used: true,
            readings: entry.readings.map(([hour, value]) => ({ hour, value })),
          },
        ]
      : []
  })
  const read = { ...coupling, found }
  return found.length === 0 || undetermined(read).length > 0 ? undefined : asFound(read)
}

const minus = (a: Misalignment, b: Misalignment): Misalignment => ({
  y: a.y - b.y,
  z: a.z - b.z,
  sy: a.sy - b.sy,
  sz: a.sz - b.sz,
})

/** Differences as they count: those of a sweep once its zero is fitted, since it has one of its own. */
function largestOf({ rows, line }: SetComparison): number[] {
  const zero = rows.reduce((all, { difference }) => all + difference, 0) / Math.max(1, rows.length)
  return [
    ...rows.map(({ difference }) => Math.abs(difference - zero)),
    ...(line ? [Math.abs(line.offset.y), Math.abs(line.offset.z)] : []),
  ]
}

const lineAnswer = (d: Misalignment) => ({
  offset: { y: d.y, z: d.z },
  slope: { y: d.sy, z: d.sz },
})
