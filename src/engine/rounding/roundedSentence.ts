import { shareAskedWords } from '../../language/askedShare'
import { tol } from '../../mechanics/tolerances'
import { fineAmount } from '../../language/roundedAmounts'
import { fineText, shareText, toldText } from '../../language/amounts'
import type { Train } from '../../mechanics/train'
import { tidy } from '../../language/tidy'
import type { RoundingFigures } from './answer'

/** What rounding to the store's shims comes to, in two or three sentences. */
export function roundedSentence(train: Train, rounded: RoundingFigures): string {
  const { before, worstShare } = rounded
  if (rounded.status === 'no rounding')
    return `The shims of the store do not give a plan: ${rounded.why[0] ?? 'what was found did not pass its proof'}. With every foot rounded by itself the tightest coupling would use ${shareText(worstShare)} of its tolerance: that is not a plan.`
  const { cost, bound } = rounded
  const less =
    rounded.status === 'rounded' && tidy(cost) < tidy(before.cost)
      ? ', less because shims on three rows need not lie exactly in one plane'
      : ''
  const paid = `Rounded to the shims of the store it comes to ${toldText(cost, train.units)} in place of ${toldText(before.cost, train.units)}${less}`
  const { told = cost } = rounded.ways ?? {}
  const tells = (part: number, whole: number) => part > 1 && part > tol.ended * whole
  const leaving = tells(cost - told, told) ? cost - told : 0
  const [used, usedBefore] = [shareText(worstShare), shareText(before.worstShare)]
  const share =
    used === usedBefore
      ? `the tightest coupling still uses ${used} of its tolerance`
      : `the tightest coupling then uses ${used} of its tolerance in place of ${usedBefore}`
  // what is kept free may be what passes it
  const over = worstShare > train.plan.share ? 'That' : 'With what is kept free of every limit that'
  const sentences = [
    `${paid}; ${share}.`,
    ...(rounded.status === 'over the share asked for'
      ? [
          `${over} is over the ${shareText(train.plan.share)} ${shareAskedWords(train.plan)}: no rounding within it was found${rounded.proven ? '' : ' before the search was ended'}.`,
        ]
      : []),
    ...(leaving > 0
      ? [
          `Leaving moves under ${fineText(train.plan.leave, train.units)} alone costs ${toldText(leaving, train.units)} of that.`,
        ]
      : []),
    ...(tells(told - bound, told)
      ? [
          bound > 0
            ? `The search was ended: this one may cost up to ${toldText(cost - bound, train.units)} (${partText((cost - bound) / bound)}) more than need be; no rounding ${rounded.status === 'rounded' ? 'within that tolerance used' : 'at that tolerance used'} comes to less than ${fineAmount(bound, 'down', train)}.`
            : 'The search was ended: how much less another rounding could come to is not known.',
        ]
      : []),
  ]
  return sentences.join(' ')
}

/** A part of a whole: "7 %", "0.4 %". */
const partText = (part: number): string =>
  `${Number((100 * part).toPrecision(part < 0.01 ? 1 : 2))} %`
