import { fineText } from '../../../language/amounts'
import type { Body, Train } from '../../../mechanics/train'
import type { Action } from './action'
import type { GapAnswer } from './answer'
import { practice } from './cautions'
import { gapWords } from './gapWords'

/**
 * What must be seen before the next step; nothing before the stop point that reads.
 * @param gaps to be measured after a move along the train
 */
export function holdAfter(
  train: Train,
  { kind }: Action,
  gaps: readonly GapAnswer[],
  more: boolean,
): string | undefined {
  if (kind === 'axial') {
    return gaps.length === 0
      ? 'Stop point: measure the distance between the shaft ends on both sides before going on.'
      : `Stop point: between the shaft ends ${gapWords(train, gaps)}.`
  }
  if (kind === 'vertical' && more)
    return 'Stop point: jacks down, its bolts snug; then read the couplings beside it and compare before the next move.'
  return undefined
}

/**
 * At a stop point with readings: what to do with them.
 * @param gaps of the couplings that can be judged there
 * @param stator what is done about a stator of the body
 */
export function readHold(
  train: Train,
  body: Body,
  gaps: readonly GapAnswer[],
  last: boolean,
  stator: string,
): string {
  const follows = fineText(practice.follows, train.units)
  const watch = `Stop point: a foot that moves more than ${follows} while its bolt is tightened is soft. Compare with the expected readings before ${body.kind === 'skid' ? 'anything on it moves' : 'the next machine moves'}.${gapsThere(train, gaps)}${stator}`
  return last
    ? `${watch} With all within tolerance: soft foot and pipe strain once more, then this is the as-left record.`
    : watch
}

const gapsThere = (train: Train, gaps: readonly GapAnswer[]): string =>
  gaps.length === 0 ? '' : ` Between the shaft ends ${gapWords(train, gaps)}.`
