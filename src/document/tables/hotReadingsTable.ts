import { hotCheckTitle } from '../edits/hotCheckEntry'
import type { DraftSet } from '../edits/readingPresets'
import { withList, withValue } from '../place'
import type { TrainDocument } from '../schema'
import { couplingTitleOf } from '../titles'
import { couplingColumn, couplingOfRow } from './couplingRows'
import { hotCheckColumn, hotCheckOfRow } from './hotCheckRows'
import type { PastedValues, PasteOutcome, PasteTarget } from './pasted'
import { filledSet, rowsOfSet, setColumns, setOfRow } from './readingRows'

/** Readings after a stop as a table: a row a set, with its coupling and how long after the stop. */
export const hotReadingsTable: PasteTarget = {
  what: 'readings after a stop',
  needs: 'after',
  columns: [
    hotCheckColumn,
    couplingColumn,
    {
      key: 'after',
      heading: 'after the stop',
      names: ['after', 'minutes'],
      kind: 'time',
      down: true,
    },
    { key: 'set', heading: 'set', names: ['set number'], kind: 'plain' },
    ...setColumns,
  ],
  put,
  rows: (document) =>
    (document.hotChecks ?? []).flatMap((check, h) =>
      (check.couplings ?? []).flatMap(({ coupling: id, times }) => {
        const c = document.couplings.findIndex((one) => one.id === id)
        return times.flatMap(({ after, found }) =>
          (found as readonly DraftSet[]).flatMap((set, s) =>
            rowsOfSet(
              {
                check: hotCheckTitle(check, h),
                coupling: c < 0 ? id : couplingTitleOf(document, c),
                after,
                set: s + 1,
              },
              set,
            ),
          ),
        )
      }),
    ),
}

/** Changes the set of that number at that time, or adds it; the first row of all begins a hot check of the last state. */
function put(document: TrainDocument, values: PastedValues): PasteOutcome {
  const of = hotCheckOfRow(document, values)
  if (typeof of === 'string') return { why: of }
  const { start, h } = of
  const checks = start.hotChecks ?? []
  const c = couplingOfRow(start, values)
  if (typeof c === 'string') return { why: c }
  const { after } = values
  if (typeof after !== 'number')
    return { why: 'how long after the stop it was read is missing: give the minutes' }
  if (after < 0) return { why: `after the stop: ${after} min is before it` }
  const id = start.couplings[c]?.id ?? ''
  const list = checks[h]?.couplings ?? []
  const at = list.findIndex(({ coupling }) => coupling === id)
  const times = list[at]?.times ?? []
  const t = times.findIndex((time) => time.after === after)
  const sets = (times[t]?.found ?? []) as readonly DraftSet[]
  const s = setOfRow(sets, values)
  if (typeof s === 'string') return { why: s }
  const set = filledSet(sets[s], values)
  if (typeof set === 'string') return { why: set }
  const place = ['hotChecks', h, 'couplings']
  const joined =
    at >= 0 ? start : withList(start, place, (now) => [...now, { coupling: id, times: [] }])
  const time = [...place, at < 0 ? list.length : at, 'times']
  const timed = t >= 0 ? joined : withList(joined, time, (now) => [...now, { after, found: [] }])
  return {
    document: withValue(timed, [...time, t < 0 ? times.length : t, 'found', s], set),
    does: `${s < sets.length ? 'changes' : 'adds'} set ${s + 1} of ${couplingTitleOf(start, c)}, ${after} min after the stop, ${hotCheckTitle(checks[h], h)}`,
  }
}
