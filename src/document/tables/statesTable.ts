import { withState } from '../edits/stateEdits'
import { valueAt, withValue, type Path } from '../place'
import type { StateDocument, TrainDocument } from '../schema'
import { stateNamed } from '../titles'
import { same } from './bodyNamed'
import type { CsvCell } from './csv'
import type { PasteColumn, PastedValues, PasteOutcome, PasteTarget } from './pasted'

interface StateColumn extends PasteColumn {
  readonly path: Path
}

const columns: readonly StateColumn[] = [
  { key: 'name', heading: 'state', names: ['condition', 'name'], kind: 'text', path: ['name'] },
  {
    key: 'tolerance',
    heading: 'tolerances times',
    names: ['tolerance', 'factor'],
    kind: 'plain',
    path: ['tolerance'],
  },
  { key: 'load', heading: 'load', names: [], kind: 'plain', percent: true, path: ['load'] },
  {
    key: 'temperature',
    heading: 'temperature',
    names: [],
    kind: 'temperature',
    path: ['temperature'],
  },
  {
    key: 'from',
    heading: 'growth between',
    names: ['between'],
    kind: 'text',
    path: ['between', 'from'],
  },
  { key: 'to', heading: 'and', names: [], kind: 'text', path: ['between', 'to'] },
  { key: 'by', heading: 'by', names: [], kind: 'text', path: ['between', 'by'] },
]

/** States as a table: a row a state; its load, its temperature and the two states its growth lies between. */
export const statesTable: PasteTarget = {
  what: 'states',
  columns,
  put,
  rows: ({ states = [] }) => {
    const named = (id: string | undefined) => states.find((state) => state.id === id)?.name
    return states.map((state) => ({
      ...Object.fromEntries(
        columns.map(({ key, path }): [string, CsvCell] => [key, valueAt(state, path) as CsvCell]),
      ),
      from: named(state.between?.from),
      to: named(state.between?.to),
    }))
  },
}

/** Changes the state that a row names, or adds one of that name below the others. */
function put(document: TrainDocument, values: PastedValues): PasteOutcome {
  const name = String(values['name'] ?? '').trim()
  if (name === '') return { why: 'the state is not named: add a column with its name' }
  const { tolerance, load } = values
  if (typeof tolerance === 'number' && tolerance <= 0)
    return { why: `tolerances times: ${tolerance} is not above 0` }
  if (typeof load === 'number' && load < 0) return { why: `load: ${load} is below 0` }
  // never by its number in the list: a state may be called by a number
  const at = document.states?.findIndex((state) => same(state.name, name)) ?? -1
  const known = at < 0 ? undefined : at
  const s = known ?? document.states?.length ?? 0
  const began = known === undefined ? withState(document, name) : document
  const between = betweenOf(began, s, values)
  if (typeof between === 'string') return { why: between }
  const fields = Object.entries({ tolerance, load, temperature: values['temperature'], between })
  const given = fields.filter(([, value]) => value !== undefined)
  if (known !== undefined && given.length === 0)
    return { why: 'nothing but the name stands in this row' }
  const what = given.map(([key]) => words[key as keyof typeof words]).join(', ')
  return {
    document: given.reduce((now, [key, value]) => withValue(now, ['states', s, key], value), began),
    does: `${known === undefined ? 'adds' : 'changes'} ${began.states?.[s]?.name ?? name}${what === '' ? '' : `: ${what}`}`,
  }
}

const words = {
  tolerance: 'tolerances times',
  load: 'load',
  temperature: 'temperature',
  between: 'growth between two states',
}

type Between = NonNullable<StateDocument['between']>

/** The two states that growth lies between and by what, as far as a row changes it; why it cannot be taken. */
function betweenOf(
  document: TrainDocument,
  s: number,
  values: PastedValues,
): Between | string | undefined {
  const said = (key: string) => String(values[key] ?? '').trim()
  if (['from', 'to', 'by'].every((key) => said(key) === '')) return undefined
  const before = document.states?.[s]?.between
  const end = (key: 'from' | 'to'): { id: string } | string => {
    if (said(key) === '') return before ? { id: before[key] } : lacks
    const at = stateNamed(document, said(key))
    const state = at === undefined ? undefined : document.states?.[at]
    if (!state) return `no state is called “${said(key)}”: give its row above this one`
    return at === s ? `${state.name} is the state itself: give another` : { id: state.id }
  }
  const by = said('by') === '' ? before?.by : said('by').toLowerCase()
  if (by !== 'load' && by !== 'temperature')
    return by === undefined ? lacks : `by “${by}” is neither load nor temperature`
  const [from, to] = [end('from'), end('to')]
  if (typeof from === 'string') return from
  if (typeof to === 'string') return to
  return { from: from.id, to: to.id, by }
}

const lacks = 'growth between two states needs both states and by what: load or temperature'
