import type { TrainDocument } from '../schema'
import { withValue } from '../place'
import { couplingTitleOf } from '../titles'
import {
  cellsOfRow,
  couplingColumn,
  couplingOfRow,
  lineColumns,
  onlyNames,
  withCells,
} from './couplingRows'
import type { PastedValues, PasteOutcome, PasteTarget } from './pasted'
import type { PathColumn } from './pathColumns'

const columns: readonly PathColumn[] = [
  ...lineColumns,
  {
    key: 'from',
    heading: 'from',
    names: ['drawing', 'letter', 'page'],
    kind: 'text',
    path: ['from'],
  },
  { key: 'use', heading: 'used', names: ['use'], kind: 'yes', path: ['use'] },
  { key: 'why', heading: 'why', names: ['reason'], kind: 'text', path: ['why'] },
]

/** Makers' cold settings as a table: a row a coupling. */
export const settingsTable: PasteTarget = {
  what: 'cold settings',
  needs: 'from',
  columns: [couplingColumn, ...columns],
  put,
  rows: (document) =>
    document.couplings.flatMap(({ setting }, c) =>
      setting === undefined
        ? []
        : [{ coupling: couplingTitleOf(document, c), ...cellsOfRow(columns, setting) }],
    ),
}

/** One that is to be used needs its reason, and a coupling without aims. */
function put(document: TrainDocument, values: PastedValues): PasteOutcome {
  const c = couplingOfRow(document, values)
  if (typeof c === 'string') return { why: c }
  const place = ['couplings', c, 'setting']
  const { document: filled, what } = withCells(document, place, columns, values)
  if (what === '') return { why: onlyNames }
  const title = couplingTitleOf(document, c)
  const { setting, aim } = filled.couplings[c] ?? {}
  if (setting?.use === true && (setting.why ?? '') === '')
    return { why: `used at ${title}, and no reason is given: write it under “why”` }
  if (setting?.use === true && Object.keys(aim ?? {}).length > 0)
    return { why: `used at ${title}, where an aim is given too: one or the other, never both` }
  return {
    // what a file takes anyway is not written
    document: values['use'] === false ? withValue(filled, [...place, 'use'], undefined) : filled,
    does: `changes the cold setting of ${title}: ${what}`,
  }
}
