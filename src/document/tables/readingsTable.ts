import type { TrainDocument } from '../schema'
import { indexOfHour, quarterHours, withHour, type DraftReading } from '../edits/hours'
import type { PastedValues, PasteTarget, PasteOutcome } from './pasted'
import { withValue } from '../place'
import type { DraftSet } from '../edits/readingPresets'
import { couplingNamed, couplingTitleOf } from '../titles'

const kinds = ['rim', 'face', 'gap', 'spool', 'line'] as const
const hourKey = (hour: number): string => `at ${hour}`

/** Readings as a table: a row a set, top, side, bottom, side; further hours in rows of their own. */
export const readingsTarget: PasteTarget = {
  what: 'readings',
  columns: [
    { key: 'coupling', heading: 'coupling', names: ['between'], kind: 'text' },
    { key: 'set', heading: 'set', names: ['set number'], kind: 'plain' },
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
    { key: 'oz', heading: 'offset up', names: ['offset z'], kind: 'fine' },
    { key: 'oy', heading: 'offset sideways', names: ['offset y'], kind: 'fine' },
    { key: 'sz', heading: 'slope up', names: ['slope z'], kind: 'slope' },
    { key: 'sy', heading: 'slope sideways', names: ['slope y'], kind: 'slope' },
    { key: 'u', heading: 'u', names: ['uncertainty'], kind: 'fine' },
    { key: 'use', heading: 'used', names: ['counts'], kind: 'yes' },
    { key: 'why', heading: 'why', names: ['reason'], kind: 'text' },
    { key: 'when', heading: 'when', names: ['date'], kind: 'text' },
    { key: 'by', heading: 'by', names: ['read by'], kind: 'text' },
  ],
  put,
  rows: (document) =>
    document.couplings.flatMap((_, c) => {
      const sets = (document.couplings[c]?.found ?? []) as DraftSet[]
      return sets.flatMap((set, s) => rowsOf(couplingTitleOf(document, c), set, s))
    }),
}

/** The row of a set that is there changes it; a number one higher than the last begins a new one. */
function put(document: TrainDocument, values: PastedValues): PasteOutcome {
  const c = couplingNamed(document, text(values['coupling']))
  if (c === undefined)
    return {
      why: `no coupling is called “${text(values['coupling'])}”: write its name or its number`,
    }
  const sets = (document.couplings[c]?.found ?? []) as DraftSet[]
  const s = values['set'] === undefined ? sets.length : Number(values['set']) - 1
  if (!Number.isInteger(s) || s < 0 || s > sets.length)
    return {
      why: `set ${s + 1} cannot be entered: there are ${sets.length}, the next is ${sets.length + 1}`,
    }
  const kind = values['kind'] === undefined ? sets[s]?.['kind'] : text(values['kind']).toLowerCase()
  if (!kinds.some((one) => one === kind))
    return { why: `“${text(values['kind'])}” is no kind of reading: write ${kinds.join(', ')}` }
  const shaft = values['shaft'] === undefined ? undefined : text(values['shaft']).toLowerCase()
  if (shaft !== undefined && shaft !== 'left' && shaft !== 'right')
    return { why: `shaft “${text(values['shaft'])}” is neither left nor right` }
  const before = sets[s]?.['kind'] === kind ? sets[s] : { kind }
  const next = filled(before ?? { kind }, values, shaft)
  return {
    document: withValue(document, ['couplings', c, 'found', s], next),
    does: `${s < sets.length ? 'changes' : 'adds'} set ${s + 1} of ${couplingTitleOf(document, c)}`,
  }
}

function filled(set: DraftSet, values: PastedValues, shaft: string | undefined): DraftSet {
  const { kind } = set
  const given = (fields: Record<string, unknown>) =>
    Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined))
  const face = values['face'] === undefined ? undefined : text(values['face']).toLowerCase()
  const common = given({
    u: values['u'],
    use: values['use'] === false ? false : undefined,
    why: values['why'],
    when: values['when'],
    by: values['by'],
  })
  if (kind === 'line')
    return [
      ['oy', 'offset', 'y'],
      ['oz', 'offset', 'z'],
      ['sy', 'slope', 'y'],
      ['sz', 'slope', 'z'],
    ].reduce<DraftSet>(
      (now, [key = '', part = '', axis = '']) =>
        values[key] === undefined ? now : withValue(now, [part, axis], values[key]),
      { ...set, ...given({ at: values['at'] }), ...common },
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
      sag: kind === 'gap' ? undefined : values['sag'],
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

const text = (value: string | number | boolean | undefined): string => String(value ?? '').trim()

type Row = Readonly<Record<string, string | number | boolean | undefined>>

function rowsOf(coupling: string, set: DraftSet, s: number): Row[] {
  const field = (name: string) => set[name] as string | number | boolean | undefined
  const pair = (name: string) => (set[name] ?? {}) as { y?: number; z?: number }
  const readings = (set['readings'] ?? []) as DraftReading[]
  const quarters = quarterHours.map((hour) => indexOfHour(readings, hour))
  const first: Row = {
    coupling,
    set: s + 1,
    kind: field('kind'),
    shaft: field('rides') ?? field('end'),
    face: field('face'),
    at: field('at'),
    diameter: field('diameter'),
    sag: field('sag'),
    ...Object.fromEntries(
      quarterHours.map((hour, i) => [hourKey(hour), readings[quarters[i] ?? -1]?.[1]]),
    ),
    oz: pair('offset').z,
    oy: pair('offset').y,
    sz: pair('slope').z,
    sy: pair('slope').y,
    u: field('u'),
    use: field('use'),
    why: field('why'),
    when: field('when'),
    by: field('by'),
  }
  const further = readings.flatMap(([hour, value], i) =>
    quarters.includes(i) ? [] : [{ coupling, set: s + 1, hour, value }],
  )
  return [first, ...further]
}
