import { footFieldList } from '../footFields'
import { quantityAt } from '../numbers'
import type { Path } from '../place'
import type { PasteColumn } from './pasted'

/** A column of the table of feet. */
export interface FootColumn extends PasteColumn {
  /** Where it stands within a foot; empty for what names the foot. */
  readonly path: Path
  /** Whether it is no number below 0. */
  readonly least?: 0
}

/** What names a foot, and the figures of the foot that such a table has. */
export const feetColumns: readonly FootColumn[] = [
  {
    key: 'machine',
    heading: 'machine',
    names: ['body', 'skid', 'equipment'],
    kind: 'text',
    down: true,
    path: [],
  },
  {
    key: 'foot',
    heading: 'foot',
    names: ['foot id', 'id', 'foot no', 'support'],
    kind: 'text',
    path: [],
  },
  ...footFieldList.flatMap(({ key, heading, names, path, cell, least }): FootColumn[] => {
    if (!names) return []
    const kind = cell.is === 'tick' ? 'yes' : quantityAt(['machines', 0, 'feet', 0, ...path])
    return [{ key, heading, names, path, kind, ...(least === 0 && { least }) }]
  }),
]
