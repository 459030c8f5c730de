import type { SurveyedRow } from '../mechanics/surveys/loopCheck'
import type { OneEntry } from '../mechanics/surveys/oneEntry'
import type { Train } from '../mechanics/train'
import type { SurveyCheck } from '../mechanics/uncertainty/surveyChecks'
import { fineText, lengthText, slopeText } from './amounts'
import type { Micrometres } from '../mechanics/units'
import { capital } from './names'
import { towardSide } from './sides'

/** Entries that are told one by one; more are counted. */
const mostTold = 4

/** Whether a survey and the readings of the couplings tell of the same train, in one sentence without its stop. */
export function surveyVerdict(train: Train, check: SurveyCheck): string {
  const name = capital(train.surveys[check.survey]?.name ?? '')
  const sum = `sum of squares ${check.squares.toFixed(1)} with ${check.freedom} degrees of freedom`
  const rarely = `a sound survey is said to contradict at most once in ${Math.round(1 / check.risk)}`
  if (check.agree)
    return `${name} agrees with the readings of the couplings: ${sum}, up to ${check.limit.toFixed(1)} is allowed (${rarely})`
  const far = farthestRow(check)
  return `${name} contradicts the readings of the couplings: ${timesAllowed(check).toFixed(1)} times what their uncertainties allow (${sum}; ${rarely})${far ? `; farthest off is the ${rowName(train, far)}, ${apartWords(train, far)}` : ''}`
}

/** What one entry would explain a contradiction, as a sentence without its stop; undefined where there is none. */
export function surveyExplained(train: Train, check: SurveyCheck): string | undefined {
  if (check.agree) return undefined
  return (
    oneEntryWords(train, check.explains, 'this survey') ??
    'no single entry explains it: more than one is wrong, or a machine was moved between readings and survey'
  )
}

/** The entries any of which would explain a contradiction, as a sentence without its stop; undefined where there is none. */
export function oneEntryWords(
  train: Train,
  explains: readonly OneEntry[],
  whose: 'this survey' | 'these surveys',
): string | undefined {
  const several = whose === 'these surveys'
  const all = several ? 'all of it' : 'it'
  const [only] = explains
  if (!only) return undefined
  const words = (entry: OneEntry) => `the ${entryWords(train, entry, several)}`
  if (explains.length === 1) return `one entry would explain ${all}: ${words(only)}; read it again`
  const told = explains.slice(0, mostTold).map(words)
  const more =
    explains.length > told.length ? `; or one of ${explains.length - told.length} others` : ''
  return `one entry would explain ${all}, and ${whose} cannot tell which: ${told.join('; or ')}${more}; read these again`
}

/** How far over what chance leaves: 1 and less where they agree. */
const timesAllowed = ({ squares, limit, explains, entryLimit }: SurveyCheck): number =>
  Math.max(Math.sqrt(squares / limit), ...explains.map(({ w }) => Math.abs(w) / entryLimit))

const timesApart = ({ apart }: SurveyedRow): number => (apart ? Math.abs(apart.by) / apart.u : 0)

/** The number that lies farthest off in its own uncertainty; undefined where none is told by anything else. */
export const farthestRow = ({ rows }: SurveyCheck): SurveyedRow | undefined =>
  rows
    .filter(({ apart }) => apart)
    .reduce<SurveyedRow | undefined>(
      (a, b) => (a && timesApart(a) >= timesApart(b) ? a : b),
      undefined,
    )

/** "height of Gear at x 1800 mm" */
function rowName(
  train: Train,
  {
    machine,
    x,
    way,
    survey,
    index,
  }: Pick<SurveyedRow, 'machine' | 'x' | 'way' | 'survey' | 'index'>,
): string {
  const body = train.machines[machine]
  const axis = train.surveys[survey]?.points[index]?.axis
  const which = body?.twoAxes === true && axis !== undefined ? `, ${axis} shaft,` : ''
  const what = way === 'z' ? 'height' : 'sideways place'
  return `${what} of ${body?.name ?? ''}${which} at x ${lengthText(x, train.units)}`
}

/** "120 um higher than all else says, 4.1 times what is unsure" */
const apartWords = (train: Train, row: SurveyedRow): string =>
  `${apartSaid(train, row.way, row.apart?.by ?? 0)} than all else says, ${timesApart(row).toFixed(1)} times what is unsure`

/** "120 um higher", "30 um further toward 3 o'clock"; um. */
export function apartSaid(train: Train, way: 'z' | 'y', apart: Micrometres): string {
  const size = fineText(Math.abs(apart), train.units)
  if (way === 'z') return `${size} ${apart < 0 ? 'lower' : 'higher'}`
  return `${size} further ${towardSide(train, apart < 0 ? -1 : 1)}`
}

/** What would be wrong, and by how much; of which survey, where there are several. */
function entryWords(train: Train, entry: OneEntry, several: boolean): string {
  const size = Math.abs(entry.error)
  if (entry.kind === 'point') {
    const survey = train.surveys[entry.survey]
    const point = survey?.points[entry.index]
    const of = several ? ` in ${survey?.name ?? ''}` : ''
    const row = { ...entry, machine: point?.machine ?? 0, x: point?.x ?? 0 }
    const up = entry.error < 0 ? 'low' : 'high'
    const side = `far ${towardSide(train, entry.error < 0 ? -1 : 1)}`
    return `${rowName(train, row)}${of}, ${fineText(size, train.units)} too ${entry.way === 'z' ? up : side}`
  }
  const coupling = train.couplings[entry.coupling]?.name ?? ''
  // the survey sees so much more than was read
  const read = -entry.error
  const upright = entry.number === 'z' || entry.number === 'sz'
  const way = upright ? (read < 0 ? 'down' : 'up') : towardSide(train, read < 0 ? -1 : 1)
  return entry.number === 'z' || entry.number === 'y'
    ? `offset of ${coupling} as read, ${fineText(size, train.units)} too far ${way}`
    : `slope of ${coupling} as read, ${slopeText(size, train.units)} too far ${way}`
}

/** Whether the plan stands on the survey too, as a sentence without its stop. */
export const surveyJoined = (train: Train, { survey, agree }: SurveyCheck): string =>
  train.surveys[survey]?.joins === true
    ? agree
      ? 'the lines of the couplings are fitted to it and to the readings together'
      : 'the lines of the couplings are fitted to it all the same'
    : 'the plan stands on the readings alone'
