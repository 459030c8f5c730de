import type { GrowthPointDocument, TrainDocument } from '../schema'
import { growthQuantities } from '../../mechanics/train'
import type { PastedValues, PasteTarget, PasteOutcome } from './pasted'
import { pastedRange } from './pastedRange'
import { withValue } from '../place'
import { machineNamed, stateNamed } from '../titles'

const ends = ['low', 'high'] as const
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
    ...growthQuantities.flatMap((way) =>
      ends.map((end) => ({
        key: `${way} ${end}`,
        heading: `${way} ${end}`,
        names: [`${end === 'low' ? 'least' : 'most'} ${way}`],
        kind: 'fine' as const,
      })),
    ),
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
          ...Object.fromEntries(
            growthQuantities.flatMap((way) =>
              ends.map((end, i) => [`${way} ${end}`, point.range?.[way]?.[i]]),
            ),
          ),
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
  const ranges = growthQuantities.map((way) => [way, intervalOf(way, points[p], values)] as const)
  const refused = ranges.find(([, range]) => typeof range === 'string')
  if (refused) return { why: String(refused[1]) }
  const path = ['machines', m, 'growth', state.id, p]
  const began = withValue(document, path.slice(0, -1), points)
  const fields = ['at', 'rise', 'side', 'axial', 'u', 'use', 'when', 'by', 'why'] as const
  const next = [
    ...fields.map((key) => [[key], values[key]] as const),
    ...heatFields.map((key) => [['heat', key], values[key]] as const),
    [['axis'], axis === 'left' || axis === 'right' ? axis : undefined] as const,
    [['source'], source === '' ? undefined : source] as const,
    ...ranges.map(([way, range]) => [['range', way], range] as const),
  ].reduce<Partial<GrowthPointDocument>>(
    (point, [field, value]) => (value === undefined ? point : withValue(point, field, value)),
    points[p] ?? {},
  )
  return {
    document: withValue(began, path, next),
    does: `${p < points.length ? 'changes' : 'adds'} point ${p + 1} of ${document.machines[m]?.name ?? ''}, ${state.name}`,
  }
}

/** The interval of one way, which stands in place of a value; or why it is none. */
function intervalOf(
  way: (typeof growthQuantities)[number],
  before: GrowthPointDocument | undefined,
  values: PastedValues,
): readonly [number, number] | string | undefined {
  const range = pastedRange(way, before?.range?.[way], [
    values[`${way} low`],
    values[`${way} high`],
  ])
  if (range === undefined || typeof range === 'string') return range
  const [low, high] = range
  if (low > high)
    return `${way}: ${low} to ${high} is the wrong way round: give the lower end first`
  if (values[way] !== undefined || before?.[way] !== undefined)
    return `${way}: ${low} to ${high} is given beside a value: give the interval or the value, not both`
  if (way === 'rise' && (before?.heat ?? heatFields.find((key) => values[key] !== undefined)))
    return `rise: ${low} to ${high} is given beside temperatures: give the interval or the temperatures, not both`
  if (values['u'] !== undefined || before?.u !== undefined)
    return `${way}: ${low} to ${high} is given beside u, and an interval says itself how unsure it is`
  return range
}
