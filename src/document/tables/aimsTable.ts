import type { TrainDocument } from '../schema'
import { couplingTitleOf, stateNamed } from '../titles'
import {
  cellsOfRow,
  couplingColumn,
  couplingOfRow,
  lineColumns,
  onlyNames,
  saidIn,
  withCells,
} from './couplingRows'
import type { PastedValues, PasteOutcome, PasteTarget } from './pasted'
import type { PathColumn } from './pathColumns'

const columns: readonly PathColumn[] = [
  ...lineColumns,
  { key: 'why', heading: 'why', names: ['reason'], kind: 'text', path: ['why'] },
]

/** Aims as a table: a row the line wanted of a coupling in a state. */
export const aimsTable: PasteTarget = {
  what: 'aims',
  needs: 'state',
  columns: [
    couplingColumn,
    { key: 'state', heading: 'state', names: ['condition'], kind: 'text' },
    ...columns,
  ],
  put,
  rows: (document) =>
    document.couplings.flatMap((coupling, c) =>
      (document.states ?? []).flatMap(({ id, name }) => {
        const aim = coupling.aim?.[id]
        return aim === undefined
          ? []
          : [
              {
                coupling: couplingTitleOf(document, c),
                state: name,
                ...cellsOfRow(columns, aim),
              },
            ]
      }),
    ),
}

function put(document: TrainDocument, values: PastedValues): PasteOutcome {
  const c = couplingOfRow(document, values)
  if (typeof c === 'string') return { why: c }
  const said = saidIn(values, 'state')
  const s = stateNamed(document, said)
  const state = s === undefined ? undefined : document.states?.[s]
  if (!state)
    return {
      why:
        said === ''
          ? 'the state is not named: add a column with its name'
          : `no state is called “${said}”: add it first`,
    }
  const title = couplingTitleOf(document, c)
  if (document.couplings[c]?.setting?.use === true)
    return { why: `the maker’s cold setting is used at ${title}: one or the other, never both` }
  const { document: next, what } = withCells(
    document,
    ['couplings', c, 'aim', state.id],
    columns,
    values,
  )
  return what === ''
    ? { why: onlyNames }
    : { document: next, does: `changes the aim of ${title}, ${state.name}: ${what}` }
}
