import { percentAsked } from '../language/chanceText'
import { shareText } from '../language/amounts'
import type { WantedOfHold } from '../engine/chance/answer'
import type { HoldRow } from '../engine/studies/holds/row'

/** "keeps to 62 % of tolerance for the 90 % asked for", or that it does not reach that. */
export function withinWords({ chance, reached, share, looked }: WantedOfHold): string {
  const keeps = `keeps to ${shareText(share)} of tolerance`
  if (looked === false) return `${keeps}, no other tolerance used looked for`
  return reached
    ? `${keeps} for the ${percentAsked(chance)} asked for`
    : `${keeps}, where it comes nearest to the ${percentAsked(chance)} asked for`
}

/** What the column of shares means, of choices that were each given their own. */
export function withinSentence(rows: readonly HoldRow[]): string {
  const all = rows.flatMap(({ wanted }) => wanted ?? [])
  const [first] = all
  if (!first) return ''
  const percent = percentAsked(first.chance)
  const none = all.every(({ reached }) => !reached)
  const short = none
    ? `none reaches ${percent}, each stands at its best, the best first`
    : 'those that reach it at none stand last, at their best'
  const left = all.some(({ looked }) => looked === false)
    ? `; for the last ones no tolerance used but the one asked for was looked at`
    : ''
  return `within: the largest tolerance used at which a choice is found to be ${percent} sure; ${short}${left}.`
}
