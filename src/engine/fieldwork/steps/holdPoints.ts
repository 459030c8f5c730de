import { fineText, lengthText } from '../../../language/amounts'
import type { Body, Train } from '../../../mechanics/train'
import type { Motion } from '../../../mechanics/motion'
import { couplingMotions } from '../../../mechanics/misalignment/couplingMotion'
import { listed } from '../../../language/names'
import type { Action } from './action'
import { practice } from './cautions'

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

function gapsAt(train: Train, couplings: readonly number[], now: readonly Motion[]): string[] {
  const some = { ...train, couplings: couplings.flatMap((c) => train.couplings[c] ?? []) }
  const moved = couplingMotions(some, now)
  return some.couplings.flatMap(({ axial, name }, i) =>
    axial
      ? [`of ${name} ${lengthText(axial.found + (moved[i]?.gap ?? 0) / 1000, train.units)}, cold`]
      : [],
  )
}

/** At a stop point with readings: what to do with them. */
export function readHold(train: Train, body: Body, last: boolean): string {
  const follows = fineText(practice.follows, train.units)
  const watch = `Stop point: a foot that moves more than ${follows} while its bolt is tightened is soft. Compare with the expected readings before ${body.kind === 'skid' ? 'anything on it moves' : 'the next machine moves'}.`
  return last
    ? `${watch} With all within tolerance: soft foot and pipe strain once more, then this is the as-left record.`
    : watch
}
