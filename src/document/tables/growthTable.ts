import type { GrowthPointDocument, TrainDocument } from '../schema'
import type { PastedValues, PasteTarget, PasteOutcome } from './pasted'
import { withValue } from '../place'
import { machineNamed, stateNamed } from '../titles'

const heatFields = ['height', 'expansion', 'from', 'to', 'material'] as const

/** Growth as a table: a row a point of a machine in a state. */
export const growthTarget: PasteTarget = {
  what: 'growth',
  columns: [
    { key: 'machine', heading: 'machine', names: ['body'], kind: 'text' },
    { key: 'state', heading: 'state', names: ['condition'], kind: 'text' },
    { key: 'point', heading: 'point', names: ['point number'], kind: 'plain' },
    { key: 'at', heading: 'at x', names: ['x', 'at', 'place'], kind: 'length' },
    { key: 'axis', heading: 'axis', names: ['shaft'], kind: 'text' },
    { key: 'rise', heading: 'rise', names: ['up', 'vertical'], kind: 'fine' },
    { key: 'side', heading: 'side', names: ['sideways', 'horizontal'], kind: 'fine' },
    { key: 'axial', heading: 'axial', names: ['along'], kind: 'fine' },
    { key: 'u', heading: 'u', names: ['uncertainty'], kind: 'fine' },
    { key: 'height', heading: 'height', names: ['leg'], kind: 'length' },
    { key: 'expansion', heading: 'expansion', names: ['coefficient'], kind: 'expansion' },
    { key: 'from', heading: 'from', names: ['cold'], kind: 'temperature' },
    { key: 'to', heading: 'to', names: ['hot'], kind: 'temperature' },
    { key: 'material', heading: 'material', names: ['made of'], kind: 'text' },
    { key: 'source', heading: 'source', names: ['comes from'], kind: 'text' },
    { key: 'use', heading: 'used', names: ['counts'], kind: 'yes' },
    { key: 'when', heading: 'when', names: ['date'], kind: 'text' },
    { key: 'by', heading: 'by', names: ['who'], kind: 'text' },
    { key: 'why', heading: 'why', names: ['note'], kind: 'text' },
  ],
  put,
  rows: (document) =>
    document.machines.flatMap((machine) =>
      (document.states ?? []).flatMap(({ id, name }) =>
        (machine.growth?.[id] ?? []).map((point, p) => ({
          machine: machine.name,
          state: name,
          point: p + 1,
          at: point.at,
          axis: point.axis,
          rise: point.rise,
          side: point.side,
          axial: point.axial,
          u: point.u,
          ...point.heat,
          source: point.source,
          use: point.use,
          when: point.when,
          by: point.by,
          why: point.why,
        })),
      ),
    ),
}

/** The row of a point that is there changes it; a number one higher than the last adds one. */
function put(document: TrainDocument, values: PastedValues): PasteOutcome {
  const said = (key: string) => String(values[key] ?? '').trim()
  const m = machineNamed(document, said('machine'))
  if (m === undefined) return { why: `no machine is called “${said('machine')}”` }
  const s = stateNamed(document, said('state'))
  const state = s === undefined ? undefined : document.states?.[s]
  if (!state) return { why: `no state is called “${said('state')}”: add it first` }
  const points = document.machines[m]?.growth?.[state.id] ?? []
  const p = values['point'] === undefined ? points.length : Number(values['point']) - 1
  if (!Number.isInteger(p) || p < 0 || p > points.length)
    return {
      why: `point ${p + 1} cannot be entered: there are ${points.length}, the next is ${points.length + 1}`,
    }
  const axis = said('axis').toLowerCase()
  if (axis !== '' && axis !== 'left' && axis !== 'right' && axis !== 'both')
    return { why: `axis “${axis}” is neither left nor right, nor both` }
  const source = said('source').toLowerCase()
  if (source !== '' && source !== 'given' && source !== 'measured')
    return { why: `source “${source}” is neither given nor measured` }
  const path = ['machines', m, 'growth', state.id, p]
  const began = withValue(document, path.slice(0, -1), points)
  const fields = ['at', 'rise', 'side', 'axial', 'u', 'use', 'when', 'by', 'why'] as const
  const next = [
    ...fields.map((key) => [[key], values[key]] as const),
    ...heatFields.map((key) => [['heat', key], values[key]] as const),
    [['axis'], axis === 'left' || axis === 'right' ? axis : undefined] as const,
    [['source'], source === '' ? undefined : source] as const,
  ].reduce<Partial<GrowthPointDocument>>(
    (point, [field, value]) => (value === undefined ? point : withValue(point, field, value)),
    points[p] ?? {},
  )
  return {
    document: withValue(began, path, next),
    does: `${p < points.length ? 'changes' : 'adds'} point ${p + 1} of ${document.machines[m]?.name ?? ''}, ${state.name}`,
  }
}
