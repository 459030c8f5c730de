import type { TrainDocument } from '../schema'
import { roles } from '../../mechanics/train'
import { addMachine } from '../edits/machines'
import { valueAt, withValue } from '../place'
import { machineNamed } from '../titles'
import { bodyAmounts, fixedColumns, freeColumns, liftColumns, type BodyColumn } from './bodyColumns'
import type { CsvCell } from './csv'
import type { PastedValues, PasteOutcome, PasteTarget } from './pasted'
import { belowNought, numberColumns } from './pathColumns'

const number = numberColumns('machines')

const columns: readonly BodyColumn[] = [
  { key: 'name', heading: 'machine', names: ['name'], kind: 'text', path: ['name'] },
  { key: 'role', heading: 'role', names: ['kind'], kind: 'text', path: ['role'] },
  number('axis above feet', ['shaft height', 'axis z', 'height'], 'axis', 'z'),
  number('axis y', ['shaft y'], 'axis', 'y'),
  number('left axis above feet', ['left axis z', 'left height'], 'axis', 'left', 'z'),
  number('left axis y', [], 'axis', 'left', 'y'),
  number('right axis above feet', ['right axis z', 'right height'], 'axis', 'right', 'z'),
  number('right axis y', [], 'axis', 'right', 'y'),
  ...fixedColumns,
  number('speed', [], 'speed'),
  ...liftColumns,
  number('feet above skid’s feet', ['above skid'], 'base'),
  ...freeColumns,
]
/** What is no number below 0. */
const amounts = ['speed', ...bodyAmounts]

/** Machines as a table, from the left end of the train to the right: a row a machine. */
export const machinesTable: PasteTarget = {
  what: 'machines',
  columns,
  put,
  rows: (document) =>
    document.machines.map((machine) =>
      Object.fromEntries(
        columns.map(({ key, path }): [string, CsvCell] => [key, valueAt(machine, path) as CsvCell]),
      ),
    ),
}

/** Changes the machine that a row names, or adds one of that name at the right end. */
function put(document: TrainDocument, values: PastedValues): PasteOutcome {
  const name = String(values['name'] ?? '').trim()
  if (name === '') return { why: 'the machine is not named: add a column with its name' }
  const role = roleOf(values['role'])
  if (role === null)
    return { why: `“${String(values['role'])}” is no role: write ${roles.join(', ')}` }
  const given = columns.filter(({ key }) => values[key] !== undefined)
  const low = belowNought(columns, amounts, values)
  if (low !== undefined) return { why: low }
  const axes = given.flatMap(({ path }) => (path[0] === 'axis' ? [path.length] : []))
  if (new Set(axes).size > 1)
    return { why: 'one axis is given and an axis at each end too: a machine has one or the other' }
  const known = machineNamed(document, name)
  const m = known ?? document.machines.length
  const began = known === undefined ? addMachine(document, m).document : document
  const two = valueAt(began, ['machines', m, 'axis', 'left']) !== undefined
  // one axis and one at each end are never mixed: what a row gives takes the place of the other kind
  const start =
    axes.length > 0 && two !== axes.includes(3)
      ? withValue(began, ['machines', m, 'axis'], {})
      : began
  const next = given.reduce((now, { key, path, instead }) => {
    if (key === 'name' && known !== undefined) return now
    const value = key === 'role' ? role : key === 'name' ? name : values[key]
    // what a file takes anyway is not written
    return withValue(now, ['machines', m, ...path], value === instead ? undefined : value)
  }, start)
  const what = given.flatMap(({ key, heading }) => (key === 'name' ? [] : [heading])).join(', ')
  if (known === undefined)
    return {
      document: next,
      does: `adds ${name} at the right end${what === '' ? '' : `: ${what}`}`,
    }
  return what === ''
    ? { why: 'nothing but the name stands in this row' }
    : { document: next, does: `changes ${document.machines[m]?.name ?? name}: ${what}` }
}

/** A role as it is kept; undefined where none is given, null where it is none. */
function roleOf(value: PastedValues[string] | undefined): string | null | undefined {
  if (value === undefined) return undefined
  const said = String(value).trim().toLowerCase().replace(/\s+/g, '-')
  return roles.find((role) => role === said) ?? null
}
