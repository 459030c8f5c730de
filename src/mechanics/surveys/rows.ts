import type { Gains } from '../readings/gains'
import type { SurveyPoint } from '../survey'
import type { Train } from '../train'
import type { Micrometres, Millimetres } from '../units'

/** One number of a survey: a height or a sideways place. */
export interface SurveyRow {
  /** Indices in `surveys` and in its `points`. */
  readonly survey: number
  readonly index: number
  readonly way: 'z' | 'y'
  readonly machine: number
  readonly x: Millimetres
  readonly value: Micrometres
  readonly u: Micrometres
}

/** All numbers of a survey in the order of its points, height first. */
export function surveyRows({ surveys }: Pick<Train, 'surveys'>, survey: number): SurveyRow[] {
  return (surveys[survey]?.points ?? []).flatMap((point, index) =>
    (['z', 'y'] as const).flatMap((way): SurveyRow[] => {
      const value: SurveyPoint['z'] = point[way]
      if (value === undefined) return []
      return [{ survey, index, way, machine: point.machine, x: point.x, value, u: point.u }]
    }),
  )
}

/**
 * What a row gains from `[y, sy, z, sz]` of a coupling. The axis of a machine lies off the line of the first one by the
 * misalignments of all couplings before it, each carried along x: offset + slope (x - mid-span). The line of the first
 * machine itself cannot be told from the survey's own.
 */
export function rowGains(train: Train, { machine, x, way }: SurveyRow, c: number): Gains {
  const coupling = train.couplings[c]
  if (!coupling || coupling.right > machine) return [0, 0, 0, 0]
  const arm = x - coupling.mid
  return way === 'y' ? [1, arm, 0, 0] : [0, 0, 1, arm]
}

/** What is not known of each survey and direction: height and slope of its own line, scaled to the reach of its places. */
export const datumColumns = (rows: readonly SurveyRow[]): number[][] =>
  lineColumns(rows, ({ survey, way }) => `${survey} ${way}`)

/** The same of each machine and direction: where its axis lies, if nothing is known of the couplings. */
export const axisColumns = (rows: readonly SurveyRow[]): number[][] =>
  lineColumns(rows, ({ machine, way }) => `${machine} ${way}`)

/** Height and slope of a line of each group of rows. */
function lineColumns(rows: readonly SurveyRow[], keyOf: (row: SurveyRow) => string): number[][] {
  const groups = new Map<string, Set<SurveyRow>>()
  for (const row of rows) {
    const own = groups.get(keyOf(row)) ?? new Set()
    groups.set(keyOf(row), own.add(row))
  }
  return [...groups.values()].flatMap((own) => {
    const xs = [...own].map(({ x }) => x)
    const middle = (Math.max(...xs) + Math.min(...xs)) / 2
    const reach = (Math.max(...xs) - Math.min(...xs)) / 2 || 1
    const column = (of: (row: SurveyRow) => number) =>
      rows.map((row) => (own.has(row) ? of(row) : 0))
    return [column(() => 1), column(({ x }) => (x - middle) / reach)]
  })
}
