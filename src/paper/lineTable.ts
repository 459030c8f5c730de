import { fineText } from '../language/amounts'
import { capital, inSentence } from '../language/names'
import { towardSide } from '../language/sides'
import { tidy } from '../language/tidy'
import type { ExpectedAnswer } from '../engine/plan/answer'
import { setReadings, type StopReading } from '../engine/fieldwork/steps/stopReadings'
import type { ReadingSet, Train } from '../mechanics/train'
import { slopeSign } from '../mechanics/units'
import type { Block } from './page'

type LineSet = Extract<ReadingSet, { kind: 'line' }>

/** A coupling given as a line: how the right shaft lies against the left one, as found, as expected, and a box for it. */
export function lineTable(train: Train, set: LineSet, expected: ExpectedAnswer | undefined): Block {
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
