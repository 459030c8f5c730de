import { addSurvey } from '../edits/surveyEdits'
import { valueAt, withList, withValue } from '../place'
import type { SurveyDocument, TrainDocument } from '../schema'
import { bodyNamed, same } from './bodyNamed'
import type { PastedValues, PasteOutcome, PasteTarget } from './pasted'

const numbers = ['z', 'y', 'u'] as const

/** Of the survey itself, in any of its rows, and what a yes or no is where a file says nothing. */
const ofSurvey = [
  { key: 'method' },
  { key: 'use', instead: true },
  { key: 'joins', instead: false },
  { key: 'why' },
] as const

const titleOf = ({ name, id }: SurveyDocument): string => name ?? id

/** Places of surveys as a table: a row a place; one at the same x of the same machine is changed. */
export const surveysTable: PasteTarget = {
  what: 'survey places',
  columns: [
    { key: 'survey', heading: 'survey', names: [], kind: 'text', down: true },
    { key: 'on', heading: 'on', names: ['machine'], kind: 'text', down: true },
    { key: 'x', heading: 'x', names: ['at', 'place'], kind: 'length' },
    { key: 'z', heading: 'height', names: ['z', 'rise', 'level'], kind: 'fine', reading: true },
    { key: 'y', heading: 'sideways', names: ['y', 'side'], kind: 'fine', reading: true },
    { key: 'u', heading: 'unsure by', names: ['u', 'uncertainty'], kind: 'fine' },
    { key: 'method', heading: 'method', names: ['how'], kind: 'text' },
    { key: 'use', heading: 'survey is used', names: ['used', 'counts'], kind: 'yes' },
    { key: 'joins', heading: 'survey joins the lines', names: ['joins', 'joined'], kind: 'yes' },
    { key: 'why', heading: 'why not used', names: ['why', 'reason'], kind: 'text' },
  ],
  put,
  rows: (document) =>
    (document.surveys ?? []).flatMap((survey) =>
      survey.points.map(({ machine, x, z, y, u }) => ({
        survey: titleOf(survey),
        method: survey.method,
        ...{ use: survey.use ?? true, joins: survey.joins ?? false, why: survey.why },
        on: document.machines.find(({ id }) => id === machine)?.name ?? machine,
        ...{ x, z, y, u },
      })),
    ),
}

/** Without a survey there the first row begins one; a survey that is named must be there, but for the first of all. */
function put(document: TrainDocument, values: PastedValues): PasteOutcome {
  const body = bodyNamed(document, values['on'])
  if (typeof body === 'string') return { why: body }
  if (body.kind === 'skid')
    return { why: `${body.name} is a skid: a survey is of shafts, name the machine` }
  const { x } = values
  if (typeof x !== 'number') return { why: 'the place along the train is missing: give its x' }
  if (values['z'] === undefined && values['y'] === undefined)
    return { why: 'neither a height nor a sideways place stands in this row' }
  const named = values['survey'] === undefined ? undefined : String(values['survey'])
  const start = (document.surveys ?? []).length === 0 ? begun(document, named) : document
  const surveys = start.surveys ?? []
  const at =
    named === undefined
      ? surveys.length - 1
      : surveys.findIndex((survey) => same(titleOf(survey), named) || same(survey.id, named))
  if (at < 0) return { why: `no survey is called “${named ?? ''}”: add it, or write its name` }
  const points = surveys[at]?.points ?? []
  const found = points.findIndex((point) => point.machine === body.id && point.x === x)
  const place = found < 0 ? points.length : found
  const path = ['surveys', at, 'points']
  const grown =
    found < 0 ? withList(start, path, (list) => [...list, { machine: body.id, x }]) : start
  const entered = numbers.reduce(
    (now, key) =>
      values[key] === undefined ? now : withValue(now, [...path, place, key], values[key]),
    grown,
  )
  return {
    document: ofSurvey.reduce((now, one) => {
      const value = values[one.key]
      if (value === undefined) return now
      // what a file takes anyway is not written
      const kept = 'instead' in one && value === one.instead ? undefined : value
      return withValue(now, ['surveys', at, one.key], kept)
    }, entered),
    does: `${found < 0 ? 'adds' : 'changes'} the place at ${String(x)} on ${body.name}`,
  }
}

/** A survey of that name with no place yet. */
function begun(document: TrainDocument, name: string | undefined): TrainDocument {
  const { document: next } = addSurvey(document)
  const path = ['surveys', (next.surveys?.length ?? 1) - 1]
  const named = name === undefined ? next : withValue(next, [...path, 'name'], name)
  return valueAt(named, path) === undefined ? named : withList(named, [...path, 'points'], () => [])
}
