import { fineSign, micrometresPer } from '../../mechanics/units'
import type { Train } from '../../mechanics/train'
import { ExportNames } from './exportNames'
import { factInWords, notesOf } from './exportWords'
import { programUnit, shareColumn, type Cut, type Program, type Row } from './program'
import { stageProgram, stageRows, type Stage } from './stage'

/** A linear program ready to be written: named, one bound a row, its optimum in the document's fine unit. */
export interface ExportedProgram {
  readonly title: string
  /** What a reader should know, a line each. */
  readonly notes: readonly string[]
  readonly columns: readonly ExportedColumn[]
  readonly groups: readonly { readonly note: string; readonly rows: readonly ExportedRow[] }[]
}

interface ExportedColumn {
  readonly name: string
  readonly lower: number
  readonly upper: number
  /** Coefficient of what is minimised. */
  readonly cost: number
}

export interface ExportedRow {
  readonly name: string
  readonly terms: readonly (readonly [column: string, coefficient: number])[]
  readonly sense: '<=' | '>=' | '='
  readonly rhs: number
}

/**
 * The unit that displacements are written in: the document's, but µm for one in mm. Solvers keep
 * bounds to 1e-7 of whatever unit they are given; of a mm, that is more than a plan's last digits.
 */
const unitFor = { um: 'um', mm: 'um', mil: 'mil' } as const

/**
 * Names the least-cost program and turns its displacements from program units into a fine unit.
 * Every column but the share is a displacement, so right-hand sides, bounds and what stands before
 * the share are multiplied; costs turn the sum back into the document's fine unit. A row with two bounds becomes two rows, since
 * CPLEX LP as most readers take it has no other way to say so.
 */
export function exportProgram(
  train: Train,
  program: Program,
  stage: Extract<Stage, { ask: 'cost' }>,
  cuts: readonly Cut[],
): ExportedProgram {
  const unit = unitFor[train.units.fine]
  const factor = programUnit / micrometresPer[unit]
  const perUnit = micrometresPer[unit] / micrometresPer[train.units.fine]
  const linear = stageProgram(program, stage, cuts)
  const columnNames = new ExportNames()
  const columns = linear.columns.map(({ lower, upper }, c) => {
    const scale = c === shareColumn ? 1 : factor
    return {
      name: columnNames.take(program.columns[c]?.name ?? ''),
      lower: lower * scale,
      upper: upper * scale,
      cost: (linear.objective[c] ?? 0) * perUnit,
    }
  })
  const rowNames = new ExportNames()
  rowNames.take('cost')
  const groups: { note: string; rows: ExportedRow[] }[] = []
  for (const row of stageRows(program, stage, cuts)) {
    const note = factInWords(train, row.meaning)
    if (groups.at(-1)?.note !== note) groups.push({ note, rows: [] })
    groups.at(-1)?.rows.push(...exportRow(row, columns, rowNames, factor))
  }
  return {
    title: train.name,
    notes: notesOf(train, fineSign[unit]),
    columns,
    groups,
  }
}

function exportRow(
  row: Row,
  columns: readonly ExportedColumn[],
  names: ExportNames,
  factor: number,
): ExportedRow[] {
  const terms = row.terms.map(([column, coefficient]): [string, number] => [
    columns[column]?.name ?? '',
    column === shareColumn ? coefficient * factor : coefficient,
  ])
  const one = (name: string, sense: ExportedRow['sense'], bound: number): ExportedRow => ({
    name: names.take(name),
    terms,
    sense,
    rhs: bound === 0 ? 0 : bound * factor,
  })
  const low = Number.isFinite(row.lower)
  const high = Number.isFinite(row.upper)
  if (low && high && row.lower === row.upper) return [one(row.name, '=', row.lower)]
  const both = low && high
  return [
    ...(low ? [one(both ? `${row.name} min` : row.name, '>=', row.lower)] : []),
    ...(high ? [one(both ? `${row.name} max` : row.name, '<=', row.upper)] : []),
  ]
}
