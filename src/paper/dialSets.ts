import { fineText, signedDigits } from '../language/amounts'
import { capital } from '../language/names'
import { sideNoun } from '../language/sides'
import type { ExpectedAnswer } from '../engine/plan/answer'
import { setReadings } from '../engine/fieldwork/steps/stopReadings'
import { closure } from '../mechanics/readings/closure'
import { sagOf } from '../mechanics/readings/equation'
import type { Coupling, ReadingSet, Train } from '../mechanics/train'
import { fineSign } from '../mechanics/units'
import { dialSketch, rigWords } from './dialSketch'
import { fittedToWords } from './columnWidths'
import type { Block, Table } from './page'
import { setHeading } from './setHeading'
import { columnGap, textWidth } from './size'

type Sweep = Exclude<ReadingSet, { kind: 'line' }>

/** Two sets of dials beside each other, in one table where they are read at the same hours; an odd one keeps to its half. */
export function dialSets(
  train: Train,
  coupling: Coupling,
  sets: readonly { readonly set: Sweep; readonly index: number }[],
  expectedOf: (index: number) => ExpectedAnswer | undefined,
): Block[] {
  return sets.flatMap((one, i): Block[] => {
    if (i % 2 === 1) return []
    const other = sets[i + 1]
    const heads = [one, ...(other ? [other] : [])].map(({ set, index }) =>
      setHead(train, coupling, set, index),
    )
    const column = ({ set, index }: typeof one) => ({ set, index, expected: expectedOf(index) })
    const hours = ({ set }: typeof one) => set.readings.map(({ hour }) => hour).join()
    const beside = (parts: readonly (readonly Block[])[]): Block => ({
      kind: 'beside',
      parts: parts.map((blocks) => ({ width: 6, blocks })),
    })
    if (other && hours(one) === hours(other))
      return [
        beside(heads.map((blocks) => [...blocks])),
        hourTable(train, [column(one), column(other)]),
      ]
    const whole = [one, ...(other ? [other] : [])].map((entry, k) => [
      ...(heads[k] ?? []),
      hourTable(train, [column(entry)]),
    ])
    return [beside(other ? whole : [...whole, []])]
  })
}

/** How one set is rigged, drawn, beside what to know of it. */
const setHead = (train: Train, coupling: Coupling, set: Sweep, index: number): Block[] => [
  setHeading(train, set, index),
  {
    kind: 'beside',
    parts: [
      {
        width: 4,
        blocks: [{ kind: 'figures', figures: [dialSketch(train, coupling, set)], leads: true }],
      },
      {
        width: 8,
        blocks: [
          {
            kind: 'text',
            look: 'small',
            text: `${capital(rigWords(train, set))}. ${notes(train, set)}`,
          },
        ],
      },
    ],
  },
]

/** Values with their sign; gauges between faces have none. */
const reading = (train: Train, set: Sweep, value: number): string => {
  const digits = signedDigits(value, train.units)
  return set.kind === 'gap' ? digits.replace(/^[+\u2212]/, '') : digits
}

interface SetColumns {
  readonly set: Sweep
  readonly index: number
  readonly expected: ExpectedAnswer | undefined
}

/**
 * Of each set what was found, what is expected when all is done and where that is good, as the tablet has it, and a box for
 * what is read then.
 */
function hourTable(train: Train, sets: readonly SetColumns[]): Block {
  const many = sets.length > 1
  const columns = sets.map(({ set, index, expected }) => {
    const told = expected && setReadings(train, set, expected)
    return {
      heads: [
        {
          head: `${many ? `set ${index + 1}: ` : ''}found, ${fineSign[train.units.fine]}`,
          width: 1.5,
          align: 'right',
          strong: true,
        },
        ...(told
          ? ([
              { head: 'expected', width: 1.9, align: 'right', strong: true },
              { head: 'good from, to', width: many ? 2.6 : 2.1, align: 'right' },
            ] as const)
          : []),
        { head: told ? 'as left' : 'read now', width: 1.9 },
      ] as const,
      cells: set.readings.map(({ value }, k) => [
        reading(train, set, value),
        ...(told ? [told[k]?.should ?? '', told[k]?.good || 'set to 0'] : []),
        '',
      ]),
    }
  })
  const table: Table = {
    kind: 'table',
    tall: true,
    columns: [
      { head: "o'clock", width: many ? 2.4 : 2.2 },
      ...columns.flatMap(({ heads }) => [...heads]),
    ],
    rows: (sets[0]?.set.readings ?? []).map(({ hour }, k) => [
      hourWords(train, hour),
      ...columns.flatMap(({ cells }) => cells[k] ?? []),
    ]),
  }
  return fittedToWords(table, many ? textWidth : (textWidth - columnGap) / 2)
}

function hourWords(train: Train, hour: number): string {
  const whole = Math.floor(hour) === 0 ? 12 : Math.floor(hour)
  const minutes = Math.round((hour % 1) * 60)
  const clock = minutes === 0 ? String(whole) : `${whole}:${String(minutes).padStart(2, '0')}`
  const place: Record<number, string> = {
    12: 'top',
    3: sideNoun(train, 1),
    6: 'bottom',
    9: sideNoun(train, -1),
  }
  const where = place[hour]
  return where === undefined || /^\d/.test(where) ? clock : `${clock}, ${where}`
}

function notes(train: Train, set: Sweep): string {
  const { units } = train
  const sag = sagOf(set)
  const parts = [
    set.kind === 'gap'
      ? 'Gauges have no bracket: nothing is taken off.'
      : sag === 0
        ? `Sag of the bracket: ${'sagGiven' in set && set.sagGiven ? 'entered as none' : 'NOT ENTERED, taken as none: measure it on a stiff bar'}.`
        : `Write what the dial shows, sag and all: the bar reads ${reading(train, set, -2 * sag)} at 6 after 0 at 12.`,
  ]
  const found = closure(set)
  if (found !== undefined)
    parts.push(
      `Top + bottom less both sides: ${reading(train, set, found)} as found, now ______ (within ${fineText(30, units)}).`,
    )
  if (!set.used) parts.push('Not used for the plan.')
  return parts.join(' ')
}
