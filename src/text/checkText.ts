import { micrometresPer, slopeSign } from '../mechanics/units'
import { shareText } from '../language/amounts'
import type { Train } from '../mechanics/train'
import type { CheckReport } from '../engine/plan/answer'
import { asFoundShares } from './couplingsText'
import { heading, paragraph } from './layout'
import { opening } from './planText'
import { lineInWords, setName } from '../language/readingSets'
import { cautionText, findingsText, notEnteredText } from './remarksText'
import { showsNothing, valueOf } from '../engine/plan/sentence'

type Report = Extract<CheckReport, { ok: true }>

/** What stands in a train file, in lines of at most 80 characters. */
export function checkText(train: Train, report: Report): string {
  return [
    ...opening(train),
    ...paragraph(
      `The file is in order. As found, the tightest coupling uses ${shareText(report.standingShare)} of its tolerance; ${shareText(train.plan.share)} is asked for. Nothing was planned.`,
    ),
    ...heading('COUPLINGS AS FOUND', 'right machine against left, at mid-span'),
    ...train.couplings.flatMap((coupling) => {
      const entry = report.asFound.find((found) => found.coupling === coupling.id)
      if (!entry) return []
      const { offset, slope } = entry.u
      const unsure = (value: number) =>
        showsNothing(value, train) ? 'next to none' : valueOf(value, train)
      const tilt = (value: number) => `${value.toFixed(2)} ${slopeSign(train.units)}`
      return paragraph(
        `${coupling.name}: ${lineInWords(train, coupling, { y: entry.offset.y * micrometresPer[train.units.fine], z: entry.offset.z * micrometresPer[train.units.fine] }, entry.slope)}. Standard uncertainty: rise ${unsure(offset.z)} and ${tilt(slope.z)}, side ${unsure(offset.y)} and ${tilt(slope.y)}. The readings agree within ${entry.residual.toFixed(1)} of their uncertainty.`,
        '',
        2,
      )
    }),
    ...closureText(train, report),
    ...heading('SHARE OF TOLERANCE', `as found; ${shareText(train.plan.share)} is asked for`),
    ...asFoundShares(train, report.asFound, train.plan.share),
    ...findingsText(report.findings),
    ...notEnteredText(report.notEntered),
    ...cautionText(),
    '',
  ].join('\n')
}

/** Top + bottom less left + right of every full sweep. */
function closureText(train: Train, report: Report): string[] {
  if (report.closure.length === 0) return []
  return [
    ...heading(
      'CLOSURE',
      'top + bottom less the two sides; 0 when the dial ran true and nothing moved',
    ),
    ...report.closure.flatMap(({ coupling, set, value }) => {
      const joint = train.couplings.find(({ id }) => id === coupling)
      const readings = joint?.found[set]
      const name = readings ? setName(train, readings, set) : `set ${set + 1}`
      return paragraph(`${joint?.name ?? coupling}, ${name}: ${valueOf(value, train)}`, '  ', 4)
    }),
  ]
}
