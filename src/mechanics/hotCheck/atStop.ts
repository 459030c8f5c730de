import { choleskyOf } from '../cholesky'
import type { HotCheck, HotCoupling } from '../hotCheck'
import { readAt } from '../readAt'
import { asFound } from '../readings/asFound'
import type { Misalignment } from '../readings/equation'
import type { Train } from '../train'
import { lineChange, numbersOf, type ErrorSource } from '../uncertainty/errorSource'
import { foundLines, lineErrors } from '../uncertainty/foundLines'
import { readingErrors } from '../uncertainty/readingErrors'
import { coolingOf, type Cooling, type KnownTime } from './cooling'
import type { TimedLine } from './coolingFit'

/** One error of a line by its name, as what one standard deviation does to `[y, sy, z, sz]` (um, mrad). */
export interface LineError {
  readonly key: string
  readonly by: readonly number[]
}

/** A coupling as it was at the moment of the stop, or why that cannot be told. */
export type AtStop = {
  /** Index in `couplings`. */
  readonly coupling: number
  /** What was read, with the standard uncertainty of each number by the readings alone. */
  readonly times: readonly TimedLine[]
} & (Told | { readonly how: 'open'; readonly why: OpenBecause })

/** What is missing: a second or a third time, or one near enough to the stop. */
export type OpenBecause = 'one time' | 'two times' | 'any time constant' | 'cooled before'

interface Told {
  /** Read running or as it stopped; fitted over the times; read once, its drift back to the stop bounded. */
  readonly how: 'at the stop' | 'fitted' | 'bounded'
  readonly line: Misalignment
  /** Independent errors of the line; those that the line as found has too bear the same name. */
  readonly errors: readonly LineError[]
  readonly cooling?: Cooling
  /** How far each number may have drifted until it was read, of a line whose drift is bounded. */
  readonly drift?: readonly number[]
}

/** Standard uncertainty of a time constant where the file gives none, as a part of it; common practice, no source. */
const usualTimeU = 0.25

/** Every coupling that was read after the stop. */
export const linesAtStop = (train: Train, check: HotCheck): AtStop[] =>
  check.couplings.map((one) => lineAtStop(train, check, one))

function lineAtStop(train: Train, check: HotCheck, hot: HotCoupling): AtStop {
  const read = hot.times.map((time) => readErrors(train, check, hot, time))
  const times = read.map(({ line }) => line)
  const known = knownTime(hot)
  const told = toldOf(train, hot, read, known)
  if (told) return { coupling: hot.coupling, times, ...told }
  return { coupling: hot.coupling, times, how: 'open', why: openBecause(hot, known) }
}

function toldOf(
  train: Train,
  { coupling }: HotCoupling,
  read: readonly ReadLine[],
  known: KnownTime | undefined,
): Told | undefined {
  const [first, ...more] = read
  if (!first) return undefined
  if (more.length > 0) {
    const cooling = coolingOf(
      read.map(({ line }) => line),
      known,
    )
    if (cooling) return fitted(cooling, read)
  }
  if (first.line.after === 0)
    return { how: 'at the stop', line: lineOf(first.line.numbers), errors: first.errors }
  return more.length === 0 && known ? bounded(train, coupling, first, known) : undefined
}

function openBecause({ times }: HotCoupling, known: KnownTime | undefined): OpenBecause {
  if (known) return 'cooled before'
  if (times.length === 1) return 'one time'
  return times.length === 2 ? 'two times' : 'any time constant'
}

const knownTime = ({ decay }: HotCoupling): KnownTime | undefined =>
  decay && { time: decay.time, u: decay.u ?? usualTimeU * decay.time }

/** A line as it was read, its errors apart by whether they are of its own time or of a bracket, which err alike at every time. */
interface ReadLine {
  readonly line: TimedLine
  readonly errors: readonly LineError[]
  readonly brackets: readonly LineError[]
}

function readErrors(
  train: Train,
  check: HotCheck,
  { coupling }: HotCoupling,
  time: HotCoupling['times'][number],
): ReadLine {
  const of = train.couplings[coupling]
  if (!of) throw new RangeError(`no coupling ${coupling}`)
  const at = readAt(of, time)
  const found = asFound(at)
  const sources = readingErrors(at, coupling, found)
  const own = sources.filter(({ group }) => group.kind === 'readings')
  const by = own.map(({ effects }) => numbersOf(effects))
  const { y, sy, z, sz } = found.line
  const brackets = sources
    .filter(({ group }) => group.kind === 'brackets')
    .map((source) => ({ key: bracketKey(check, source), by: numbersOf(source.effects) }))
  return {
    line: {
      after: time.after,
      numbers: [y, sy, z, sz],
      covariance: four.map((i) =>
        four.map((j) => by.reduce((sum, e) => sum + (e[i] ?? 0) * (e[j] ?? 0), 0)),
      ),
    },
    brackets,
    errors: [...own.map((_, k) => ({ key: `${time.place}, ${k}`, by: by[k] ?? [] })), ...brackets],
  }
}

/** A bracket with a name is the one that the coupling was read with cold; without one nobody knows. */
const bracketKey = ({ place }: HotCheck, { key }: ErrorSource): string =>
  key.includes(', bracket ') ? key : `${place}: ${key}`

/** The gains of the fit carry what all readings of a bracket share; the rest has the covariance of the fit. */
function fitted(cooling: Cooling, read: readonly ReadLine[]): Told {
  const keys = [...new Set(read.flatMap(({ brackets }) => brackets.map(({ key }) => key)))]
  const shared = keys.map((key): LineError => {
    const all = read.flatMap(({ brackets }) => brackets.find((one) => one.key === key)?.by ?? none)
    return {
      key,
      by: cooling.gains.map((row) => row.reduce((sum, gain, i) => sum + gain * (all[i] ?? 0), 0)),
    }
  })
  const lower = choleskyOf(cooling.covariance)
  const place = `${read[0]?.errors[0]?.key ?? ''}, fitted`
  return {
    how: 'fitted',
    line: lineOf(cooling.hot),
    errors: [
      ...four.map((k) => ({ key: `${place} ${k}`, by: lower.map((row) => row[k] ?? 0) })),
      ...shared,
    ],
    cooling,
  }
}

/**
 * Read once, t after the stop: since then it has gone from hot to a = cold + (hot - cold) e^(-t/T), so that it was
 * farther from the line as found by at most (a - cold)(e^(t/T) - 1), T as short as is likely once in 40. How much of
 * that is true nobody knows: the middle counts, as unsure as an interval (JCGM 100, 4.3.7).
 */
function bounded(
  train: Train,
  coupling: number,
  first: ReadLine,
  known: KnownTime,
): Told | undefined {
  const rate = (1 + (2 * known.u) / known.time) / known.time
  const most = Math.expm1(Math.min(rate * first.line.after, tooLate))
  const line = foundLines(train)[coupling]?.line
  if (!line || rate * first.line.after >= tooLate) return undefined
  const cold = [line.y, line.sy, line.z, line.sz]
  const drift = first.line.numbers.map((value, i) => (value - (cold[i] ?? 0)) * most)
  const times = (by: readonly number[], factor: number) => by.map((value) => value * factor)
  return {
    how: 'bounded',
    line: lineOf(first.line.numbers.map((value, i) => value + (drift[i] ?? 0) / 2)),
    errors: [
      ...first.errors.map(({ key, by }) => ({ key, by: times(by, 1 + most / 2) })),
      ...coldErrors(train, coupling).map(({ key, by }) => ({ key, by: times(by, -most / 2) })),
      { key: `drift before ${first.errors[0]?.key ?? ''}`, by: times(drift, 1 / 2 / Math.sqrt(3)) },
    ],
    drift,
  }
}

/** So many time constants after the stop a reading tells nothing of it. */
const tooLate = 5

/** Errors of the line of a coupling as found. */
export const coldErrors = (train: Train, coupling: number): LineError[] =>
  lineErrors(train).flatMap(({ key, effects }) =>
    effects.flatMap((effect) =>
      effect.coupling === coupling ? [{ key, by: numbersOf([effect]) }] : [],
    ),
  )

const four = [0, 1, 2, 3] as const
const none: readonly number[] = [0, 0, 0, 0]
const lineOf = (numbers: readonly number[]): Misalignment => lineChange(numbers).misalignment
