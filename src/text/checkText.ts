import { slopeSign } from '../mechanics/units'
import { shareText, signedText, slopeDigits, toldNought, toldText } from '../language/amounts'
import { tidy } from '../language/tidy'
import { sourceSaid } from '../language/growthSourceWords'
import type { Train } from '../mechanics/train'
import { comparedSources } from '../mechanics/uncertainty/growthSources'
import type { CheckReport } from '../engine/plan/answer'
import { asFoundShares } from './couplingsText'
import { heading, paragraph, sheetText } from './layout'
import { opening } from './planText'
import { lineInWords, setName, toldWays } from '../language/readingSets'
import { cautionText, findingsText, notEnteredText } from './remarksText'
import { baseText } from './baseText'
import { coupledText } from './coupledText'
import { axialText } from './axialText'
import { statorText } from './statorText'
import { teethText } from './teethText'
import { surveysText } from './surveysText'

type Report = Extract<CheckReport, { ok: true }>

/** What stands in a train file, in lines of at most 80 characters. */
export function checkText(train: Train, report: Report): string {
  return sheetText([
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
        toldNought(value, train.units) ? 'next to none' : toldText(value, train.units)
      const tilt = (value: number) => `${slopeDigits(value)} ${slopeSign(train.units)}`
      return paragraph(
        `${coupling.name}: ${lineInWords(train, coupling, toldWays(entry.offset), toldWays(entry.slope))}. Standard uncertainty: rise ${unsure(offset.z)} and ${tilt(slope.z)}, side ${unsure(offset.y)} and ${tilt(slope.y)}. The readings agree within ${tidy(entry.residual).toFixed(1)} of their uncertainty.`,
        '',
        2,
      )
    }),
    ...closureText(train, report),
    ...growthText(train),
    ...heading('TOLERANCE USED', `as found; ${shareText(train.plan.share)} is asked for`),
    ...asFoundShares(train, report.asFound, train.plan.share),
    ...baseText(train),
    ...coupledText(train),
    ...axialText(train, report.axial),
    ...statorText(train, report.stators),
    ...teethText(train, report),
    ...surveysText(train, report),
    ...findingsText(report.findings),
    ...notEnteredText(report.notEntered),
    ...cautionText(),
    '',
  ])
}

/** Top + bottom less left + right of every full sweep. */
function closureText(train: Train, report: Report): string[] {
  if (report.closure.length === 0) return []
  return [
    ...heading(
      'DIAL SUM CHECK',
      'top + bottom less the two sides; 0 when the dial ran true and nothing moved',
    ),
    ...report.closure.flatMap(({ coupling, set, value }) => {
      const joint = train.couplings.find(({ id }) => id === coupling)
      const readings = joint?.found[set]
      const name = readings ? setName(train, readings, set) : `set ${set + 1}`
      return paragraph(
        `${joint?.name ?? coupling}, ${name}: ${signedText(tidy(value), train.units)}`,
        '  ',
        4,
      )
    }),
  ]
}

/** Sources of growth beside the one in use, whether or not they agree. */
function growthText(train: Train): string[] {
  const compared = comparedSources(train)
  if (compared.length === 0) return []
  return [
    ...heading('GROWTH BY OTHER SOURCES', 'beside the growth in use; u is a standard uncertainty'),
    ...compared.flatMap((one) => paragraph(`${sourceSaid(train, one)}.`, '', 2)),
  ]
}
