import { valueAt, withValue, type Path } from '../place'
import type { TrainDocument } from '../schema'
import { couplingNamed } from '../titles'
import type { CsvCell } from './csv'
import type { PasteColumn, PastedValues } from './pasted'
import type { PathColumn } from './pathColumns'

/** The column by which a row says which coupling it is of; an empty cell means the one above it. */
export const couplingColumn: PasteColumn = {
  key: 'coupling',
  heading: 'coupling',
  names: ['between'],
  kind: 'text',
  down: true,
}

/** The numbers of a line at mid-span: offset in the fine unit and slope in mrad, up and sideways. */
export const lineColumns: readonly PathColumn[] = [
  { key: 'oz', heading: 'offset up', names: ['offset z'], kind: 'fine', path: ['offset', 'z'] },
  {
    key: 'oy',
    heading: 'offset sideways',
    names: ['offset y'],
    kind: 'fine',
    path: ['offset', 'y'],
  },
  { key: 'sz', heading: 'slope up', names: ['slope z'], kind: 'slope', path: ['slope', 'z'] },
  { key: 'sy', heading: 'slope sideways', names: ['slope y'], kind: 'slope', path: ['slope', 'y'] },
]

/** Which coupling a row is of, by its place in the train; else why there is none. */
export function couplingOfRow(document: TrainDocument, values: PastedValues): number | string {
  const said = saidIn(values, 'coupling')
  return (
    couplingNamed(document, said) ??
    (said === ''
      ? 'the coupling is not named: add a column with its name or its number'
      : `no coupling is called “${said}”: write its name or its number`)
  )
}

/** A cell as the text that stands in it; empty where it says nothing. */
export const saidIn = (values: PastedValues, key: string): string =>
  String(values[key] ?? '').trim()

/** What columns hold of one thing in the document, for export. */
export const cellsOfRow = (
  columns: readonly PathColumn[],
  from: unknown,
): Readonly<Record<string, CsvCell>> =>
  Object.fromEntries(columns.map(({ key, path }) => [key, valueAt(from, path) as CsvCell]))

/** Puts what a row gives of these columns at a place of the document, and says which headings that were. */
export function withCells(
  document: TrainDocument,
  place: Path,
  columns: readonly PathColumn[],
  values: PastedValues,
): { readonly document: TrainDocument; readonly what: string } {
  const given = columns.filter(({ key }) => values[key] !== undefined)
  return {
    document: given.reduce(
      (now, { key, path }) => withValue(now, [...place, ...path], values[key]),
      document,
    ),
    what: given.map(({ heading }) => heading).join(', '),
  }
}

/** Why a row is refused that names something and says nothing of it. */
export const onlyNames = 'nothing but names stands in this row'
