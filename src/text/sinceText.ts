import type { Since } from '../engine/fieldwork/since/since'
import { sinceWords } from '../engine/fieldwork/since/sinceWords'
import { signedText, slopeDigits, toldText } from '../language/amounts'
import type { Train } from '../mechanics/train'
import { slopeSign } from '../mechanics/units'
import { heading, paragraph, sheetText } from './layout'
import { lineInWords, toldWays } from '../language/readingSets'
import { opening } from './planText'
import { cautionText } from './remarksText'

/** What changed since a train was last read, in lines of at most 80 characters. */
export const sinceText = (train: Train, since: Since): string =>
  sheetText([...opening(train), ...sinceLines(train, since), ...cautionText(), ''])

/** One time after the other, and all together: who walks a little every time shows there first. */
export function timesText(
  train: Train,
  times: readonly { readonly name: string; readonly since: Since }[],
  together: Since,
): string {
  return sheetText([
    ...opening(train),
    ...paragraph(`All ${times.length} times together. ${sinceWords(train, together).headline}`),
    ...timesLines(train, times, together),
    ...cautionText(),
    '',
  ])
}

/** The same without its verdict: causes, each time, all of them added up, places. */
export function timesLines(
  train: Train,
  times: readonly { readonly name: string; readonly since: Since }[],
  together: Since,
): string[] {
  return [
    ...causeLines(train, together),
    ...heading('TIME BY TIME', "how far each coupling went, up and toward 3 o'clock +"),
    ...times.flatMap(({ name, since }) => [
      ...paragraph(`${name}. ${sinceWords(train, since).headline}`, '  - '),
      ...since.changes.flatMap(({ coupling, change }) =>
        paragraph(
          `${train.couplings[coupling]?.name ?? ''}: rise ${signedText(change.z, train.units)}, side ${signedText(change.y, train.units)}`,
          '      ',
        ),
      ),
    ]),
    ...changeLines(train, together, 'all times added up'),
    ...placeLines(train, together),
  ]
}

const sinceLines = (train: Train, since: Since): string[] => [
  ...paragraph(sinceWords(train, since).headline),
  ...causeLines(train, since),
  ...changeLines(train, since, 'right machine against left, at mid-span'),
  ...placeLines(train, since),
]

function causeLines(train: Train, since: Since): string[] {
  const { causes } = sinceWords(train, since)
  return causes.length === 0
    ? []
    : [
        ...heading('WHAT MAY HAVE CHANGED', 'the likeliest first; ± holds 19 times of 20'),
        ...causes.flatMap((cause) => paragraph(cause, '  - ')),
      ]
}

function changeLines(train: Train, { changes }: Since, aside: string): string[] {
  return [
    ...heading('CHANGE AT THE COUPLINGS', aside),
    ...changes.flatMap(({ coupling: c, change, covariance }) => {
      const coupling = train.couplings[c]
      if (!coupling) return []
      const u = (k: number) => Math.sqrt(Math.max(0, covariance[k]?.[k] ?? 0))
      const tilt = (k: number) => `${slopeDigits(u(k))} ${slopeSign(train.units)}`
      return paragraph(
        `${coupling.name}: ${lineInWords(train, coupling, toldWays({ y: change.y, z: change.z }), toldWays({ y: change.sy, z: change.sz }))}. Standard uncertainty: rise ${toldText(u(2), train.units)} and ${tilt(3)}, side ${toldText(u(0), train.units)} and ${tilt(1)}.`,
        '',
        2,
      )
    }),
  ]
}

function placeLines(train: Train, since: Since): string[] {
  const { places, stayed } = sinceWords(train, since)
  return since.differs
    ? [
        ...heading('PLACES', `if ${stayed} stayed where it was: couplings tell no more`),
        ...places.flatMap((place) => paragraph(place, '  - ')),
      ]
    : []
}
