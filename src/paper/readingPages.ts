import { tidy } from '../language/tidy'
import { closure } from '../mechanics/readings/closure'
import { sagOf } from '../mechanics/readings/equation'
import { gapDigits, signedDigits, fineText } from '../language/amounts'
import { fineSign, slopeSign } from '../mechanics/units'
import type { Coupling, ReadingSet, Train } from '../mechanics/train'
import type { ExpectedAnswer } from '../engine/plan/answer'
import { gapReading, setReadings, type StopReading } from '../engine/fieldwork/steps/stopReadings'
import { hasMoves } from '../engine/plan/moves'
import type { PlanAnswer } from '../engine/fieldwork/answer'
import { sideNoun, sidesInWords, towardSide } from '../language/sides'
import { setName } from '../language/readingSets'
import { capital, inSentence } from '../language/names'
import { dialSketch, rigWords } from './dialSketch'
import type { Drawn } from './job'
import type { Block, Chapter } from './page'
import { signInWords } from './words'

type Sweep = Exclude<ReadingSet, { kind: 'line' }>
type LineSet = Extract<ReadingSet, { kind: 'line' }>

/** For each coupling, two to a page where they fit: as found, what is expected, and a box to write in what is read when all is done. */
export function readingPages({ train, answer, instructions }: Drawn): Chapter[] {
  return train.couplings.map((coupling, c) => ({
    section: 'readings',
    title: `${capital(coupling.name)}: readings`,
    whole: true,
    blocks: [
      {
        kind: 'text',
        look: 'plain',
        text: `Isolated, locked, tried to start. One person calls the turn; no hand in the coupling.${c === 0 ? ` ${signInWords} ${sidesInWords(train, 'drawing')} What a full turn may miss is common practice, no source.` : ''}`,
      },
      // one given as a line has words in its cells and takes the whole width
      ...coupling.found.flatMap((set, index) =>
        set.kind === 'line'
          ? [
              setHeading(train, set, index),
              lineTable(train, set, expectedOf(answer, coupling, index)),
            ]
          : [],
      ),
      ...inPairs(
        train,
        coupling,
        coupling.found.flatMap((set, index) => (set.kind === 'line' ? [] : [{ set, index }])),
        (index) => expectedOf(answer, coupling, index),
      ),
      ...gapTable(train, coupling, instructions),
      {
        kind: 'blanks',
        columns: 3,
        labels: ['read by, and read back by', 'date and time', 'casing temperatures'],
      },
    ],
  }))
}

/** The gap between the shaft ends, where it was entered: as found, as the last stop point there has it, and a box for it. */
function gapTable(
  train: Train,
  { id, axial }: Coupling,
  instructions: Drawn['instructions'],
): Block[] {
  if (!axial) return []
  const gap = instructions
    .flatMap(({ step }) => step.gaps ?? [])
    .findLast(({ coupling }) => coupling === id)
  const told = gap && gapReading(train, gap)
  const { length } = train.units
  return [
    {
      kind: 'table',
      tall: true,
      columns: [
        { head: `gap between the shaft ends, ${length}`, width: 3 },
        { head: 'as found', width: 2, align: 'right', strong: true },
        ...(told
          ? ([
              { head: 'expected, cold', width: 2, align: 'right', strong: true },
              { head: 'good from, to', width: 2, align: 'right' },
            ] as const)
          : []),
        { head: told ? 'as left' : 'measured now', width: 2.4 },
      ],
      rows: [
        [
          'cold, both rotors where they belong',
          gapDigits(axial.found, train.units),
          ...(told ? [told.should, told.good] : []),
          '',
        ],
      ],
    },
  ]
}

/** Two sets of dials beside each other, in one table where they are read at the same hours; an odd one keeps to its half. */
function inPairs(
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

const expectedOf = (answer: PlanAnswer, { id }: Coupling, index: number) =>
  hasMoves(answer)
    ? answer.expected.find((entry) => entry.coupling === id && entry.set === index)
    : undefined

const setHeading = (train: Train, set: ReadingSet, index: number): Block => ({
  kind: 'heading',
  text: capital(setName(train, set, index)),
  aside: set.kind === 'line' ? '' : `in ${fineSign[train.units.fine]}`,
})

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
          head: many ? `set ${index + 1}: found` : 'found',
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
  return {
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

function lineTable(train: Train, set: LineSet, expected: ExpectedAnswer | undefined): Block {
  const { units } = train
  const told = expected && 'offset' in expected ? expected : undefined
  const cell = (
    value: number | undefined,
    ways: readonly [string, string],
    digits: (v: number) => string,
  ) => {
    if (value === undefined) return 'not read'
    const text = digits(Math.abs(value))
    return /[1-9]/.test(text) ? `${text} ${value > 0 ? ways[0] : ways[1]}` : 'none'
  }
  // in the order of the rows
  const bands = told && setReadings(train, set, told)
  const goodWords = (one: StopReading | undefined) => (one ? `${one.good} ${one.unit}` : '')
  const offset = (v: number) => fineText(v, units)
  const slope = (v: number) => `${v.toFixed(2)} ${slopeSign(units)}`
  const sides = [towardSide(train, 1), towardSide(train, -1)] as const
  const row = (
    head: string,
    found: number | undefined,
    then: number | undefined,
    ways: readonly [string, string],
    digits: (v: number) => string,
    good: number,
  ) => [
    head,
    cell(found, ways, digits),
    ...(told ? [cell(then, ways, digits), goodWords(bands?.[good])] : []),
    '',
  ]
  return {
    kind: 'table',
    tall: true,
    columns: [
      { head: `${capital(inSentence('Right shaft'))} against the left one`, width: 3 },
      { head: 'as found', width: 3, strong: true },
      ...(told
        ? ([
            { head: 'expected, cold', width: 3, strong: true },
            { head: `good from, to; + is high, rising, ${towardSide(train, 1)}`, width: 3 },
          ] as const)
        : []),
      { head: told ? 'as left' : 'read now', width: 2.4 },
    ],
    rows: [
      row('height', set.offset.z, told && tidy(told.offset.z), ['high', 'low'], offset, 0),
      row('side', set.offset.y, told && tidy(told.offset.y), sides, offset, 1),
      row(
        'slope up',
        set.slope.z,
        told && tidy(told.slope.z),
        ['rising to the right', 'falling to the right'],
        slope,
        2,
      ),
      row('slope aside', set.slope.y, told && tidy(told.slope.y), sides, slope, 3),
    ],
  }
}
