import { hotCheckTitle } from '../edits/hotCheckEntry'
import { withList, withValue } from '../place'
import type { TrainDocument } from '../schema'
import { machineNamed } from '../titles'
import { saidIn } from './couplingRows'
import { hotCheckColumn, hotCheckOfRow } from './hotCheckRows'
import type { PastedValues, PasteOutcome, PasteTarget } from './pasted'

const numbers = ['rise', 'side', 'u'] as const

/** Machines measured as moved from off line to running as a table: a row a place; the place that stands there is changed. */
export const movedTable: PasteTarget = {
  what: 'machines measured as moved',
  needs: 'rise',
  columns: [
    hotCheckColumn,
    { key: 'machine', heading: 'machine', names: ['body'], kind: 'text', down: true },
    { key: 'at', heading: 'at x', names: ['x', 'at', 'place'], kind: 'length' },
    { key: 'axis', heading: 'axis', names: ['shaft'], kind: 'text' },
    { key: 'rise', heading: 'ran higher by', names: ['higher'], kind: 'fine', reading: true },
    { key: 'side', heading: 'ran sideways by', names: [], kind: 'fine', reading: true },
    { key: 'u', heading: 'unsure by', names: ['u', 'uncertainty'], kind: 'fine' },
    { key: 'against', heading: 'measured against', names: ['against'], kind: 'text' },
  ],
  put,
  rows: (document) =>
    (document.hotChecks ?? []).flatMap((check, h) =>
      (check.moved ?? []).flatMap(({ machine, against, points }) =>
        points.map((point) => ({
          check: hotCheckTitle(check, h),
          machine: document.machines.find(({ id }) => id === machine)?.name ?? machine,
          ...point,
          against,
        })),
      ),
    ),
}

/** Places of one machine are told apart by x and axis. */
function put(document: TrainDocument, values: PastedValues): PasteOutcome {
  const of = hotCheckOfRow(document, values)
  if (typeof of === 'string') return { why: of }
  const { start, h } = of
  const m = machineNamed(start, saidIn(values, 'machine'))
  const machine = m === undefined ? undefined : start.machines[m]
  if (!machine)
    return { why: `no machine is called “${saidIn(values, 'machine')}”: write its name` }
  const { at: x } = values
  if (typeof x !== 'number') return { why: 'the place along the train is missing: give its x' }
  const axis = saidIn(values, 'axis').toLowerCase()
  if (axis !== '' && axis !== 'left' && axis !== 'right')
    return { why: `axis “${axis}” is neither left nor right` }
  if (values['rise'] === undefined && values['side'] === undefined)
    return { why: 'neither how much higher nor how far sideways it ran stands in this row' }
  const list = start.hotChecks?.[h]?.moved ?? []
  const known = list.findIndex((one) => one.machine === machine.id)
  const points = list[known]?.points ?? []
  const found = points.findIndex((point) => point.at === x && (point.axis ?? '') === axis)
  const path = ['hotChecks', h, 'moved', known < 0 ? list.length : known]
  const joined =
    known >= 0
      ? start
      : withList(start, path.slice(0, -1), (now) => [...now, { machine: machine.id, points: [] }])
  const point = { at: x, ...(axis !== '' && { axis }) }
  const grown =
    found >= 0 ? joined : withList(joined, [...path, 'points'], (now) => [...now, point])
  const place = [...path, 'points', found < 0 ? points.length : found]
  const entered = numbers.reduce(
    (now, key) => (values[key] === undefined ? now : withValue(now, [...place, key], values[key])),
    grown,
  )
  const { against } = values
  return {
    document:
      against === undefined ? entered : withValue(entered, [...path, 'against'], String(against)),
    does: `${found < 0 ? 'adds' : 'changes'} how ${machine.name} moved at ${String(x)}, ${hotCheckTitle(start.hotChecks?.[h], h)}`,
  }
}
