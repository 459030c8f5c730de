import { valueAt, withList } from '../place'
import type { TrainDocument } from '../schema'
import { couplingTitleOf } from '../titles'
import { pipeStrainOf } from '../work'
import { same } from './bodyNamed'
import {
  cellsOfRow,
  couplingColumn,
  couplingOfRow,
  onlyNames,
  saidIn,
  withCells,
} from './couplingRows'
import type { PastedValues, PasteOutcome, PasteTarget } from './pasted'
import type { PathColumn } from './pathColumns'

const flangeColumns: readonly PathColumn[] = [
  {
    key: 'z',
    heading: 'moved up',
    names: ['up', 'rise'],
    kind: 'fine',
    path: ['z'],
    reading: true,
  },
  {
    key: 'y',
    heading: 'moved sideways',
    names: ['sideways', 'side'],
    kind: 'fine',
    path: ['y'],
    reading: true,
  },
  { key: 'when', heading: 'when', names: ['date'], kind: 'text', path: ['when'] },
  { key: 'by', heading: 'by', names: ['read by'], kind: 'text', path: ['by'] },
]
const limitColumns: readonly PathColumn[] = [
  { key: 'limit', heading: 'most allowed', names: ['limit'], kind: 'fine', path: ['limit'] },
  { key: 'basis', heading: 'basis', names: ['source'], kind: 'text', path: ['basis'] },
]

/** Pipe strain as a table: a row a flange; the limit of a coupling in any of its rows. */
export const strainTable: PasteTarget = {
  what: 'pipe strain',
  needs: 'flange',
  columns: [
    couplingColumn,
    { key: 'flange', heading: 'flange', names: ['nozzle'], kind: 'text' },
    ...flangeColumns,
    ...limitColumns,
  ],
  put,
  rows: (document) =>
    document.couplings.flatMap((coupling, c) => {
      const strain = pipeStrainOf(coupling.strain)
      const title = { coupling: couplingTitleOf(document, c) }
      const limit = strain ? cellsOfRow(limitColumns, strain) : {}
      return (strain?.flanges ?? []).map((flange, f) => ({
        ...title,
        flange: flange.name,
        ...cellsOfRow(flangeColumns, flange),
        ...(f === 0 && limit),
      }))
    }),
}

/** Changes the flange of that name at a coupling, or adds it below the others. */
function put(document: TrainDocument, values: PastedValues): PasteOutcome {
  const c = couplingOfRow(document, values)
  if (typeof c === 'string') return { why: c }
  const { limit } = values
  if (typeof limit === 'number' && limit <= 0)
    return { why: `most allowed: ${limit} is not above 0` }
  const name = saidIn(values, 'flange')
  if (name === '') return { why: 'the flange is not named: add a column with its name' }
  const place = ['couplings', c, 'strain']
  const flanges = (valueAt(document, [...place, 'flanges']) ?? []) as readonly { name?: string }[]
  const found = flanges.findIndex((flange) => same(name, flange.name))
  const f = found < 0 ? flanges.length : found
  const start =
    found < 0 ? withList(document, [...place, 'flanges'], (list) => [...list, { name }]) : document
  const one = withCells(start, [...place, 'flanges', f], flangeColumns, values)
  const all = withCells(one.document, place, limitColumns, values)
  const what = [one.what, all.what].filter((words) => words !== '').join(', ')
  if (what === '') return { why: onlyNames }
  return {
    document: all.document,
    does: `${found < 0 ? 'adds' : 'changes'} flange ${name} at ${couplingTitleOf(document, c)}: ${what}`,
  }
}
