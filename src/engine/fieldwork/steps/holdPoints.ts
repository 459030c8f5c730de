import { fineText } from '../../../language/amounts'
import type { Body, Train } from '../../../mechanics/train'
import type { Motion } from '../../../mechanics/motion'
import { listed } from '../../../language/names'
import type { Action } from './action'
import { practice } from './cautions'
import { gapsAt } from './gapWords'

/**
 * What must be seen before the next step; nothing before the stop point that reads.
 * @param now motions of the bodies (um, mrad)
 */
export function holdAfter(
  train: Train,
  { kind }: Action,
  couplings: readonly number[],
  now: readonly Motion[],
  more: boolean,
): string | undefined {
  if (kind === 'axial') {
    const gaps = gapsAt(train, couplings, now)
    return gaps.length === 0
      ? 'Stop point: measure the distance between the shaft ends on both sides before going on.'
      : `Stop point: between the shaft ends ${listed(gaps)}.`
  }
  if (kind === 'vertical' && more)
    return 'Stop point: jacks down, its bolts snug; then read the couplings beside it and compare before the next move.'
  return undefined
}

/**
 * At a stop point with readings: what to do with them.
 * @param judged couplings that can be judged there, by index
 */
export function readHold(
  train: Train,
  body: Body,
  judged: readonly number[],
  now: readonly Motion[],
  last: boolean,
): string {
  const follows = fineText(practice.follows, train.units)
  const watch = `Stop point: a foot that moves more than ${follows} while its bolt is tightened is soft. Compare with the expected readings before ${body.kind === 'skid' ? 'anything on it moves' : 'the next machine moves'}.${gapsThere(gapsAt(train, judged, now))}`
  return last
    ? `${watch} With all within tolerance: soft foot and pipe strain once more, then this is the as-left record.`
    : watch
}

const gapsThere = (gaps: readonly string[]): string =>
  gaps.length === 0 ? '' : ` Between the shaft ends ${listed(gaps)}.`
