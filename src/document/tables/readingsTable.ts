import type { DraftSet } from '../edits/readingPresets'
import { withValue } from '../place'
import type { TrainDocument } from '../schema'
import { couplingTitleOf } from '../titles'
import { couplingColumn, couplingOfRow } from './couplingRows'
import type { PastedValues, PasteTarget, PasteOutcome } from './pasted'
import { filledSet, rowsOfSet, setColumns, setOfRow } from './readingRows'

/** Readings as a table: a row a set, top, side, bottom, side; further hours in rows of their own. */
export const readingsTarget: PasteTarget = {
  what: 'readings',
  columns: [
    couplingColumn,
    { key: 'set', heading: 'set', names: ['set number'], kind: 'plain' },
    ...setColumns,
  ],
  put,
  rows: (document) =>
    document.couplings.flatMap((_, c) => {
      const sets = (document.couplings[c]?.found ?? []) as DraftSet[]
      const coupling = couplingTitleOf(document, c)
      return sets.flatMap((set, s) => rowsOfSet({ coupling, set: s + 1 }, set))
    }),
}

/** The row of a set that is there changes it; a number one higher than the last begins a new one. */
function put(document: TrainDocument, values: PastedValues): PasteOutcome {
  const c = couplingOfRow(document, values)
  if (typeof c === 'string') return { why: c }
  const sets = (document.couplings[c]?.found ?? []) as DraftSet[]
  const s = setOfRow(sets, values)
  if (typeof s === 'string') return { why: s }
  const next = filledSet(sets[s], values)
  if (typeof next === 'string') return { why: next }
  return {
    document: withValue(document, ['couplings', c, 'found', s], next),
    does: `${s < sets.length ? 'changes' : 'adds'} set ${s + 1} of ${couplingTitleOf(document, c)}`,
  }
}
