import type { TrainDocument } from '../schema'
import { couplingTitleOf } from '../titles'
import { cellsOfRow, couplingColumn, couplingOfRow, onlyNames, withCells } from './couplingRows'
import type { PastedValues, PasteOutcome, PasteTarget } from './pasted'
import { belowNought, type PathColumn } from './pathColumns'

const columns: readonly PathColumn[] = [
  { key: 'found', heading: 'gap found', names: ['found'], kind: 'length', path: ['found'] },
  { key: 'want', heading: 'gap wanted', names: ['wanted', 'want'], kind: 'length', path: ['want'] },
  {
    key: 'tolerance',
    heading: 'either way up to',
    names: ['tolerance'],
    kind: 'length',
    path: ['tolerance'],
  },
  { key: 'u', heading: 'gap unsure by', names: ['u', 'uncertainty'], kind: 'length', path: ['u'] },
]

/** Gaps between the shaft ends as a table: a row a coupling. */
export const gapsTable: PasteTarget = {
  what: 'axial gaps',
  columns: [couplingColumn, ...columns],
  put,
  rows: (document) =>
    document.couplings.flatMap(({ axial }, c) =>
      axial === undefined
        ? []
        : [{ coupling: couplingTitleOf(document, c), ...cellsOfRow(columns, axial) }],
    ),
}

/** A gap is checked with what was found, what is wanted and how near to it; one that lacks any is not taken. */
function put(document: TrainDocument, values: PastedValues): PasteOutcome {
  const c = couplingOfRow(document, values)
  if (typeof c === 'string') return { why: c }
  const low = belowNought(columns, ['u'], values)
  if (low !== undefined) return { why: low }
  const { tolerance } = values
  if (typeof tolerance === 'number' && tolerance <= 0)
    return { why: `either way up to: ${tolerance} is not above 0` }
  const place = ['couplings', c, 'axial']
  const { document: next, what } = withCells(document, place, columns, values)
  if (what === '') return { why: onlyNames }
  const axial: Readonly<Record<string, unknown>> = next.couplings[c]?.axial ?? {}
  const lacks = columns.find(({ key }) => key !== 'u' && axial[key] === undefined)
  const title = couplingTitleOf(document, c)
  return lacks
    ? { why: `${title} has no ${lacks.heading} yet: give it in the same row` }
    : { document: next, does: `changes the axial gap of ${title}: ${what}` }
}
