import { choleskyOf } from '../cholesky'
import { addMisalignments } from '../misalignment/stateShift'
import { besideLine, type AsFound } from '../readings/asFound'
import { joined, type Joined } from '../surveys/joined'
import type { ChainErrors } from '../surveys/chainAxes'
import type { Train } from '../train'
import { lineChange, type ErrorSource } from './errorSource'

/** The couplings as their readings alone give them. */
export interface ReadLines {
  readonly lines: readonly AsFound[]
  /** Independent errors of each. */
  readonly sources: readonly (readonly ErrorSource[])[]
  /** What each of these does to its line. */
  readonly errors: ChainErrors
}

/**
 * The lines of all couplings with surveys joined, and their errors: an error e of one line reaches all of them, as
 * e - K H e; an error of a number surveyed is one more, as K u (linear propagation, JCGM 100, 5.1.2).
 */
export function withSurveys(
  train: Train,
  { lines, sources, errors }: ReadLines,
  joining: readonly number[],
): { lines: AsFound[]; sources: ErrorSource[] } {
  const read = lines.map(({ line }) => line)
  const fit = joined(train, joining, read, errors)
  const surveyed = fit.rows.map(({ u }, i) =>
    fit.gains.map((four) => four.map((k) => u * (k[i] ?? 0))),
  )
  const all = (columns: ChainErrors, of: Part): number[][][] =>
    columns.flatMap((list, from) => list.map((e) => of(fit, from, e)))
  const kept = all(errors, left)
  const flat = sources.flat()
  const ofReadings = kept.map((changes, k) => {
    const source = flat[k]
    if (!source) throw new RangeError(`error ${k} has no name`)
    return sourceOf(source.key, source.group, changes)
  })
  const ofSurveys = fit.rows.map(({ survey, index, way }, i) =>
    sourceOf(
      `${way} of survey ${train.surveys[survey]?.id ?? ''}, point ${index}`,
      { kind: 'survey', survey },
      surveyed[i] ?? [],
    ),
  )
  // by readings alone: sag and places err again alike when the same is read a second time
  const readAlone = lines.map(({ covariance }) => columnsOf(covariance))
  const [aloneLeft, aloneTaken] = [all(readAlone, left), all(readAlone, taken)]
  const errorsTaken = all(errors, taken)
  return {
    sources: [...ofReadings, ...ofSurveys],
    lines: lines.map((was, c): AsFound => {
      const [y = 0, sy = 0, z = 0, sz = 0] = fit.changes[c] ?? []
      const at = (columns: readonly (readonly (readonly number[])[])[]) =>
        columns.map((changes) => changes[c] ?? [])
      const line = addMisalignments(was.line, { y, sy, z, sz })
      const coupling = train.couplings[c]
      return {
        ...was,
        ...(coupling && besideLine(coupling, line)),
        aloneResidual: was.residual,
        line,
        ofValues: covarianceOf([...at(aloneLeft), ...at(surveyed)]),
        covariance: covarianceOf([...at(kept), ...at(surveyed)]),
        again: covarianceOf(
          [...at(aloneLeft), ...at(errorsTaken), ...at(surveyed)],
          at(aloneTaken),
        ),
      }
    }),
  }
}

/** What becomes of an error of one coupling's line, at every coupling. */
type Part = (fit: Joined, from: number, e: readonly number[]) => number[][]

/** What an error of one coupling's line is taken for by the surveys, at every coupling. */
const taken: Part = (fit, from, e) => fit.taken(from, e)

/** What is left of it: e - K H e. */
const left: Part = (fit, from, e) =>
  taken(fit, from, e).map((four, c) =>
    four.map((value, k) => (c === from ? (e[k] ?? 0) : 0) - value),
  )

const sourceOf = (
  key: string,
  group: ErrorSource['group'],
  changes: readonly (readonly number[])[],
): ErrorSource => ({
  key,
  group,
  effects: changes.map((change, coupling) => ({ coupling, by: lineChange(change) })),
})

/** Columns whose products add up to a covariance. */
function columnsOf(covariance: readonly (readonly number[])[]): number[][] {
  const lower = choleskyOf(covariance)
  return lower.map((_, k) => lower.map((row) => row[k] ?? 0))
}

/** Sum of the products of columns, less that of others. */
const covarianceOf = (
  columns: readonly (readonly number[])[],
  less: readonly (readonly number[])[] = [],
): number[][] => {
  const sum = (list: readonly (readonly number[])[], i: number, j: number) =>
    list.reduce((all, column) => all + (column[i] ?? 0) * (column[j] ?? 0), 0)
  return [0, 1, 2, 3].map((i) => [0, 1, 2, 3].map((j) => sum(columns, i, j) - sum(less, i, j)))
}
