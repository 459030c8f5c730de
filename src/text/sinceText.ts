import type { Since } from '../engine/fieldwork/since/since'
import { sinceWords } from '../engine/fieldwork/since/sinceWords'
import { slopeDigits, toldText } from '../language/amounts'
import type { Train } from '../mechanics/train'
import { slopeSign } from '../mechanics/units'
import { heading, paragraph, sheetText } from './layout'
import { lineInWords, toldWays } from '../language/readingSets'
import { opening } from './planText'
import { cautionText } from './remarksText'

/** What changed since a train was last read, in lines of at most 80 characters. */
export function sinceText(train: Train, since: Since): string {
  const { headline, causes, places, stayed } = sinceWords(train, since)
  return sheetText([
    ...opening(train),
    ...paragraph(headline),
    ...(causes.length === 0
      ? []
      : [
          ...heading('WHAT MAY HAVE CHANGED', 'the likeliest first; ± holds 19 times of 20'),
          ...causes.flatMap((cause) => paragraph(cause, '  - ')),
        ]),
    ...heading('CHANGE AT THE COUPLINGS', 'right machine against left, at mid-span'),
    ...since.changes.flatMap(({ coupling: c, change, covariance }) => {
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
    ...(since.differs
      ? [
          ...heading('PLACES', `if ${stayed} stayed where it was: couplings tell no more`),
          ...places.flatMap((place) => paragraph(place, '  - ')),
        ]
      : []),
    ...cautionText(),
    '',
  ])
}
