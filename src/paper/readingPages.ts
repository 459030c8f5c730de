import { tidy } from '../language/tidy'
import { closure } from '../mechanics/readings/closure'
import { sagOf } from '../mechanics/readings/equation'
import { signedDigits, fineText } from '../language/amounts'
import { fineSign, slopeSign } from '../mechanics/units'
import type { Coupling, ReadingSet, Train } from '../mechanics/train'
import type { ExpectedAnswer } from '../engine/plan/answer'
import { hasMoves } from '../engine/plan/moves'
import type { PlanAnswer } from '../engine/fieldwork/answer'
import { sideNoun, towardSide } from '../language/sides'
import { setName } from '../language/readingSets'
import { capital, inSentence } from '../language/names'
import { clockFace, fitsClock } from './clockFace'
import { dialSketch } from './dialSketch'
import type { Drawn } from './job'
import type { Block, Chapter, Figure } from './page'
import { sidesInWords, signInWords } from './words'

type Sweep = Exclude<ReadingSet, { kind: 'line' }>
type LineSet = Extract<ReadingSet, { kind: 'line' }>

/** A sheet for each coupling: as found, what is expected, and the same blank to be filled in. */
export function readingPages({ train, answer }: Drawn): Chapter[] {
  return train.couplings.map((coupling) => ({
    section: 'readings',
    title: `${capital(coupling.name)}: readings`,
    blocks: [
      {
        kind: 'box',
        title: 'Before you read',
        items: [
          'Isolated, locked, tried to start. Turn only by agreed signal: one person calls, no hand in the coupling.',
          `${signInWords} ${sidesInWords(train)}`,
        ],
      },
      ...coupling.found.flatMap((set, index) => setBlocks(train, answer, coupling, set, index)),
      ...signsOf(answer, coupling),
      {
        kind: 'blanks',
        columns: 3,
        labels: ['read by, and read back by', 'date and time', 'casing temperatures'],
      },
    ],
  }))
}

/** What the readings as found say of the shafts, to be read back aloud beside the machine. */
function signsOf({ ready }: PlanAnswer, coupling: Coupling): Block[] {
  const sign = ready?.signs.find((entry) => entry.coupling === coupling.id)
  if (!sign) return []
  return [
    {
      kind: 'text',
      look: 'strong',
      text: `As found this means: ${sign.says}${sign.confirmed ? ` Read back by ${sign.by ?? 'somebody'}.` : ' Does that look right?'}`,
    },
  ]
}

function setBlocks(
  train: Train,
  answer: PlanAnswer,
  coupling: Coupling,
  set: ReadingSet,
  index: number,
): Block[] {
  const expected = hasMoves(answer)
    ? answer.expected.find((entry) => entry.coupling === coupling.id && entry.set === index)
    : undefined
  const heading: Block = {
    kind: 'heading',
    text: capital(setName(train, set, index)),
    aside: set.kind === 'line' ? '' : `in ${fineSign[train.units.fine]}`,
  }
  if (set.kind === 'line') return [heading, lineTable(train, set, expected)]
  const title = answer.status === 'planned' ? 'expected, cold, when done' : 'expected again'
  return [
    heading,
    ...(fitsClock(set.readings.map(({ hour }) => hour))
      ? [faces(train, coupling, set, title, expected)]
      : [
          { kind: 'figures', figures: [dialSketch(train, coupling, set)], leads: true } as const,
          hourTable(train, set, title, expected),
        ]),
    { kind: 'text', look: 'small', text: notes(train, set) },
  ]
}

/** Values with their sign; gauges between faces have none. */
const reading = (train: Train, set: Sweep, value: number): string => {
  const digits = signedDigits(value, train.units)
  return set.kind === 'gap' ? digits.replace(/^[+\u2212]/, '') : digits
}

function expectedAt(expected: ExpectedAnswer | undefined, k: number) {
  if (!expected || !('readings' in expected)) return undefined
  const value = expected.readings[k]?.[1]
  return value === undefined ? undefined : tidy(value)
}

function faces(
  train: Train,
  coupling: Coupling,
  set: Sweep,
  title: string,
  expected: ExpectedAnswer | undefined,
): Block {
  const all = (text: (value: number, k: number) => string) =>
    set.readings.map(({ hour, value }, k) => ({ hour, text: text(value, k) }))
  const figures: Figure[] = [
    dialSketch(train, coupling, set),
    clockFace(
      'as found',
      all((value) => reading(train, set, value)),
    ),
    ...(expected
      ? [
          clockFace(
            title,
            all((_, k) => reading(train, set, expectedAt(expected, k) ?? 0)),
          ),
        ]
      : []),
    clockFace(
      `read now: 3 is ${sideNoun(train, 1)}, 9 ${sideNoun(train, -1)}`,
      all(() => ''),
    ),
  ]
  return { kind: 'figures', figures }
}

function hourTable(
  train: Train,
  set: Sweep,
  title: string,
  expected: ExpectedAnswer | undefined,
): Block {
  return {
    kind: 'table',
    tall: true,
    columns: [
      { head: "o'clock", width: 2 },
      { head: 'as found', width: 1.6, align: 'right', strong: true },
      ...(expected ? [{ head: title, width: 2, align: 'right', strong: true } as const] : []),
      { head: 'read now', width: 2 },
    ],
    rows: set.readings.map(({ hour, value }, k) => [
      hourWords(train, hour),
      reading(train, set, value),
      ...(expected ? [reading(train, set, expectedAt(expected, k) ?? 0)] : []),
      '',
    ]),
  }
}

function hourWords(train: Train, hour: number): string {
  const whole = Math.floor(hour) === 0 ? 12 : Math.floor(hour)
  const clock = `${whole}:${String(Math.round((hour % 1) * 60)).padStart(2, '0')}`
  switch (hour) {
    case 12:
      return `${clock}, top`
    case 3:
      return `${clock}, ${sideNoun(train, 1)}`
    case 6:
      return `${clock}, bottom`
    case 9:
      return `${clock}, ${sideNoun(train, -1)}`
    default:
      return clock
  }
}

function notes(train: Train, set: Sweep): string {
  const { units } = train
  const sag = sagOf(set)
  const parts = [
    set.kind === 'gap'
      ? 'Gauges have no bracket: nothing is taken off.'
      : sag === 0
        ? `Sag of the bracket: ${'sagGiven' in set && set.sagGiven ? 'entered as none' : 'NOT ENTERED, taken as none: measure it on a stiff bar'}.`
        : `Write what the dial shows: the sag of the bracket (${fineText(sag, units)}; the bar reads ${reading(train, set, -2 * sag)} at 6 after 0 at 12) is in all of these figures.`,
  ]
  const found = closure(set)
  if (found !== undefined)
    parts.push(
      `Closure, top + bottom less ${sideNoun(train, 1)} + ${sideNoun(train, -1)}: as found ${reading(train, set, found)} ${fineSign[units.fine]}; now ________ (within ${fineText(30, units)}; common practice, no source).`,
    )
  if (!set.used) parts.push('This set is not used for the plan.')
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
  const offset = (v: number) => fineText(v, units)
  const slope = (v: number) => `${v.toFixed(2)} ${slopeSign(units)}`
  const sides = [towardSide(train, 1), towardSide(train, -1)] as const
  const row = (
    head: string,
    found: number | undefined,
    then: number | undefined,
    ways: readonly [string, string],
    digits: (v: number) => string,
  ) => [head, cell(found, ways, digits), ...(told ? [cell(then, ways, digits)] : []), '']
  return {
    kind: 'table',
    tall: true,
    columns: [
      { head: `${capital(inSentence('Right shaft'))} against the left one`, width: 3 },
      { head: 'as found', width: 3, strong: true },
      ...(told ? [{ head: 'expected, cold', width: 3, strong: true } as const] : []),
      { head: 'read now', width: 2.4 },
    ],
    rows: [
      row('height', set.offset.z, told && tidy(told.offset.z), ['high', 'low'], offset),
      row('side', set.offset.y, told && tidy(told.offset.y), sides, offset),
      row(
        'slope up',
        set.slope.z,
        told && tidy(told.slope.z),
        ['rising to the right', 'falling to the right'],
        slope,
      ),
      row('slope aside', set.slope.y, told && tidy(told.slope.y), sides, slope),
    ],
  }
}
