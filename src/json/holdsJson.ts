import type { Train } from '../mechanics/train'
import type { Holds } from '../engine/studies/holds/holdRows'
import type { HoldRow } from '../engine/studies/holds/row'
import { bindingJson, totals } from './planJson'
import { sureJson } from './sureJson'
import { written, type MeasuresOf } from './written'

const choice: MeasuresOf<HoldRow> = {
  cost: 'fine',
  costWithEffort: 'fine',
  floor: 'plain',
  total: totals,
  worstShare: 'plain',
  wanted: 'as it is',
  binding: 'as it is',
}

/** One choice of held bodies in the document's units. */
export const holdJson = <Row extends HoldRow>(row: Row, train: Train) => ({
  ...(written<HoldRow>(row, choice, train.units) as Omit<Row, 'binding'>),
  ...(row.binding && { binding: bindingJson(train, row.binding) }),
})

/** Choices of held bodies: the rows alone where every choice was solved; else that they are not all. */
export function holdsJson({ complete, rows, ranOut }: Holds, train: Train) {
  const all = rows.map(({ sure, wanted, ...row }) => ({
    ...holdJson(row, train),
    ...(sure && { sure: { ...sureJson(sure, train.units), ...(wanted && { wanted }) } }),
  }))
  if (ranOut) return { complete, unfinished: ['choices'], rows: all }
  return complete ? all : { complete, rows: all }
}
