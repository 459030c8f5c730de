import type { TrainDocument } from '../schema'
import { valueAt, withValue, type Path } from '../place'
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
  ...range('stretch', 'stretch'),
  ...rotor('left'),
  ...rotor('right'),
]
const needed = new Set(['found', 'want', 'tolerance'])

/** Low and high end of a range. */
function range(heading: string, ...path: string[]): PathColumn[] {
  return ['low', 'high'].map((end, i) => ({
    key: [...path, end].join('.'),
    heading: `${heading}, ${end}`,
    names: [],
    kind: 'length',
    path: [...path, i],
  }))
}

function rotor(side: 'left' | 'right'): PathColumn[] {
  return [
    {
      key: `rotors.${side}.centre`,
      heading: `magnetic centre, ${side} rotor`,
      names: [],
      kind: 'length',
      path: ['rotors', side, 'centre'],
    },
    ...range(`float of ${side} rotor`, 'rotors', side, 'float'),
  ]
}

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
  const { document: next, what } = withCells(
    withRanges(document, place, values),
    place,
    columns,
    values,
  )
  if (what === '') return { why: onlyNames }
  const axial: Readonly<Record<string, unknown>> = next.couplings[c]?.axial ?? {}
  const lacks = columns.find(({ key }) => needed.has(key) && axial[key] === undefined)
  const title = couplingTitleOf(document, c)
  return lacks
    ? { why: `${title} has no ${lacks.heading} yet: give it in the same row` }
    : { document: next, does: `changes the axial gap of ${title}: ${what}` }
}

/** The document with an empty list wherever the row gives an end of a range that is not there yet. */
function withRanges(document: TrainDocument, place: Path, values: PastedValues): TrainDocument {
  return columns.reduce((now, { key, path }) => {
    const list = [...place, ...path.slice(0, -1)]
    const starts = typeof path.at(-1) === 'number' && values[key] !== undefined
    return starts && valueAt(now, list) === undefined ? withValue(now, list, []) : now
  }, document)
}
