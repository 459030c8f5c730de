import type { History, Trend } from '../engine/fieldwork/since/history'
import { sinceWords } from '../engine/fieldwork/since/sinceWords'
import { signedText, toldText } from '../language/amounts'
import { listed } from '../language/names'
import { coverage95 } from '../mechanics/coverage'
import type { Train } from '../mechanics/train'
import { heading, paragraph, sheetText, table } from './layout'
import { opening } from './planText'
import { cautionText } from './remarksText'
import { timesLines } from './sinceText'

/** What walked between the outages that a file keeps, and every coupling over the years. */
export function historyText(train: Train, history: History, trends: readonly Trend[]): string {
  return sheetText([
    ...opening(train),
    ...historySaid(train, history).flatMap((words) => paragraph(words)),
    ...(history.together ? timesLines(train, history.times, history.together) : []),
    ...trendLines(train, trends),
    ...cautionText(),
    '',
  ])
}

/** The verdict over all times, and which cannot be compared. */
export function historySaid(train: Train, { together, times, open }: History): string[] {
  return [
    together
      ? `${times.length === 1 ? 'One time' : `All ${times.length} times together`}. ${sinceWords(train, together).headline}`
      : 'No two times can be compared: an outage is compared where every coupling was read as left, and the next one as found.',
    ...(open.length > 0 && together
      ? [`Not compared, since a coupling was not read: ${listed([...open])}.`]
      : []),
  ]
}

/** What the columns of a trend are called. */
const trendHeads = ['time', 'read', 'rise', '±', 'side', '±'] as const

/** A row a reading of a coupling; ± holds 19 times of 20. */
const trendRows = (train: Train, { points }: Trend): string[][] =>
  points.map(({ time, at, line, u }) => [
    time,
    at === 'now' ? 'as it is now' : `as ${at}`,
    signedText(line.z, train.units),
    toldText(coverage95 * u.z, train.units),
    signedText(line.y, train.units),
    toldText(coverage95 * u.y, train.units),
  ])

function trendLines(train: Train, trends: readonly Trend[]): string[] {
  return [
    ...heading('OVER THE YEARS', 'right machine against left at mid-span, cold; ± 19 times of 20'),
    ...trends.flatMap((trend) => [
      '',
      ...paragraph(train.couplings[trend.coupling]?.name ?? '', '', 2),
      ...table(
        trendHeads.map((head, i) => (i < 2 ? { head } : { head, align: 'right' as const })),
        trendRows(train, trend),
      ),
    ]),
  ]
}
