import { shareText } from '../units/format'
import type { Train } from '../train/model'
import type { RoundedAnswer } from '../packs/answer'
import { valueOf } from './sentence'

/** What rounding to the store's shims comes to, in one or two sentences. */
export function roundedSentence(train: Train, rounded: Omit<RoundedAnswer, 'sentence'>): string {
  const { before, cost = 0, worstShare } = rounded
  if (rounded.status === 'no rounding')
    return `The shims of the store do not give a plan: ${(rounded.why ?? []).join('; ')}. Every foot rounded by itself, the tightest coupling would use ${shareText(worstShare)} of its tolerance; that is not a plan.`
  const more = cost - before.cost
  const paid = `Rounded to the shims of the store it is ${valueOf(cost, train)} in place of ${valueOf(before.cost, train)}${more < 0 ? ', less, as shims need not lie exactly in one plane' : ''}`
  const share = `the tightest coupling uses ${shareText(worstShare)} of its tolerance in place of ${shareText(before.worstShare)}`
  const over =
    rounded.status === 'over the share asked for'
      ? ` That is over the ${shareText(train.plan.share)} asked for: no rounding within it was found.`
      : ''
  return `${paid}; ${share}.${over}`
}
