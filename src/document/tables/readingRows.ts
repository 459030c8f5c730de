import { indexOfHour, quarterHours, withHour, type DraftReading } from '../edits/hours'
import type { DraftSet } from '../edits/readingPresets'
import { withValue } from '../place'
import { cellsOfRow, lineColumns, saidIn } from './couplingRows'
import type { PasteColumn, PastedValues } from './pasted'

const kinds = ['rim', 'face', 'gap', 'spool', 'line'] as const
const hourKey = (hour: number): string => `at ${hour}`

/** The columns of a reading set: top, side, bottom, side in one row; further hours in rows of their own. */
export const setColumns: readonly PasteColumn[] = [
  { key: 'kind', heading: 'kind', names: ['method'], kind: 'text' },
  { key: 'shaft', heading: 'shaft', names: ['rides', 'end'], kind: 'text' },
  { key: 'face', heading: 'face', names: ['side of the face'], kind: 'text' },
  { key: 'at', heading: 'x', names: ['at', 'place'], kind: 'length' },
  { key: 'diameter', heading: 'diameter', names: ['circle'], kind: 'length' },
  { key: 'sag', heading: 'sag, half of the drop', names: ['half sag', 'sag'], kind: 'fine' },
  ...quarterHours.map((hour) => ({
    key: hourKey(hour),
    heading: String(hour),
    names: hour === 12 ? ['top'] : hour === 6 ? ['bottom'] : [`${hour} o'clock`],
    kind: 'fine' as const,
    reading: true,
  })),
  { key: 'hour', heading: 'hour', names: ['clock'], kind: 'hour' },
  { key: 'value', heading: 'reading', names: ['value', 'dial'], kind: 'fine', reading: true },
  ...lineColumns,
  { key: 'u', heading: 'u', names: ['uncertainty'], kind: 'fine' },
  { key: 'bracket', heading: 'bracket', names: ['bar'], kind: 'text' },
  { key: 'uSag', heading: 'u of the sag', names: ['u sag'], kind: 'fine' },
  { key: 'uLength', heading: 'u of x or diameter', names: ['u x', 'u diameter'], kind: 'length' },
  { key: 'uSlope', heading: 'u of the slope', names: ['u slope'], kind: 'slope' },
  { key: 'use', heading: 'used', names: ['counts'], kind: 'yes' },
  { key: 'why', heading: 'why', names: ['reason'], kind: 'text' },
  { key: 'when', heading: 'when', names: ['date'], kind: 'text' },
  { key: 'by', heading: 'by', names: ['read by'], kind: 'text' },
]

/** A set with what a row gives of it, of the set that stands there or anew; else why it cannot be one. */
export function filledSet(before: DraftSet | undefined, values: PastedValues): DraftSet | string {
  const kind =
    values['kind'] === undefined ? before?.['kind'] : saidIn(values, 'kind').toLowerCase()
  if (!kinds.some((one) => one === kind))
    return `“${saidIn(values, 'kind')}” is no kind of reading: write ${kinds.join(', ')}`
  const shaft = values['shaft'] === undefined ? undefined : saidIn(values, 'shaft').toLowerCase()
  if (shaft !== undefined && shaft !== 'left' && shaft !== 'right')
    return `shaft “${saidIn(values, 'shaft')}” is neither left nor right`
  const set = filled(before && before['kind'] === kind ? before : { kind }, values, shaft)
  // what a file takes anyway is not written
  if (values['use'] === undefined) return set
  return values['use'] === true ? withValue(set, ['use'], undefined) : { ...set, use: false }
}

/** Which set of a list a row means, counted from 0: that of its number, or a new one below the others; else why none. */
export function setOfRow(sets: readonly DraftSet[], values: PastedValues): number | string {
  const s = values['set'] === undefined ? sets.length : Number(values['set']) - 1
  return Number.isInteger(s) && s >= 0 && s <= sets.length
    ? s
    : `set ${s + 1} cannot be entered: there are ${sets.length}, the next is ${sets.length + 1}`
}

function filled(set: DraftSet, values: PastedValues, shaft: string | undefined): DraftSet {
  const { kind } = set
  const given = (fields: Record<string, unknown>) =>
    Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined))
  const face = values['face'] === undefined ? undefined : saidIn(values, 'face').toLowerCase()
  const common = given({
    u: values['u'],
    why: values['why'],
    when: values['when'],
    by: values['by'],
  })
  if (kind === 'line')
    return lineColumns.reduce<DraftSet>(
      (now, { key, path }) => (values[key] === undefined ? now : withValue(now, path, values[key])),
      { ...set, ...given({ at: values['at'], uSlope: values['uSlope'] }), ...common },
    )
  const readings = quarterHours.reduce<readonly DraftReading[]>(
    (list, hour) => withReading(list, hour, values[hourKey(hour)]),
    (set['readings'] ?? []) as DraftReading[],
  )
  return {
    ...set,
    ...given({
      rides: kind === 'rim' || kind === 'face' ? (shaft ?? set['rides']) : undefined,
      end: kind === 'spool' ? (shaft ?? set['end']) : undefined,
      at: kind === 'rim' ? values['at'] : undefined,
      diameter: kind === 'rim' ? undefined : values['diameter'],
      face: kind === 'face' ? face : undefined,
      ...(kind === 'rim' ? { uAt: values['uLength'] } : { uDiameter: values['uLength'] }),
      ...(kind === 'gap'
        ? {}
        : { sag: values['sag'], uSag: values['uSag'], bracket: values['bracket'] }),
    }),
    readings: withReading(readings, Number(values['hour'] ?? NaN), values['value']),
    ...common,
  }
}

function withReading(
  list: readonly DraftReading[],
  hour: number,
  value: string | number | boolean | undefined,
): readonly DraftReading[] {
  if (typeof value !== 'number' || !(hour > 0 && hour <= 12)) return list
  const there = indexOfHour(list, hour) >= 0 ? list : withHour(list, hour)
  const at = indexOfHour(there, hour)
  return there.map((reading, i) => (i === at ? [hour, value] : reading))
}

type Row = Readonly<Record<string, string | number | boolean | undefined>>

/** The rows of a set: quarter hours in the first, each further hour in one of its own. */
export function rowsOfSet(of: Row, set: DraftSet): Row[] {
  const field = (name: string) => set[name] as string | number | boolean | undefined
  const readings = (set['readings'] ?? []) as DraftReading[]
  const quarters = quarterHours.map((hour) => indexOfHour(readings, hour))
  const first: Row = {
    ...of,
    kind: field('kind'),
    shaft: field('rides') ?? field('end'),
    face: field('face'),
    at: field('at'),
    diameter: field('diameter'),
    sag: field('sag'),
    ...Object.fromEntries(
      quarterHours.map((hour, i) => [hourKey(hour), readings[quarters[i] ?? -1]?.[1]]),
    ),
    ...cellsOfRow(lineColumns, set),
    u: field('u'),
    bracket: field('bracket'),
    uSag: field('uSag'),
    uLength: field('uAt') ?? field('uDiameter'),
    uSlope: field('uSlope'),
    use: field('use'),
    why: field('why'),
    when: field('when'),
    by: field('by'),
  }
  const further = readings.flatMap(([hour, value], i) =>
    quarters.includes(i) ? [] : [{ ...of, hour, value }],
  )
  return [first, ...further]
}
