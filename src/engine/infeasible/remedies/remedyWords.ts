import { costWord } from '../../../language/costWord'
import { bestShareText } from '../../../language/roundedAmounts'
import { toldText } from '../../../language/amounts'
import type { Train } from '../../../mechanics/train'
import type { Remedy } from './answer'
import { amountsNeeded, leadOf, type Candidate } from './candidate'
import type { FieldChange } from './change'
import type { Trial } from './trial'

/**
 * A candidate as it came out, written down.
 * @param values of its sizes in order, each in the units of its give; 0 where it is not needed
 */
export function remedyOf(
  train: Train,
  candidate: Candidate,
  values: readonly number[],
  change: readonly FieldChange[],
  trial: Pick<Trial, 'solves' | 'floor'> & Partial<Trial>,
): Remedy {
  const amount = amountsNeeded(candidate, values)
  const bodies = [...new Set(amount.flatMap(({ part }) => part.body ?? []))]
  const names = train.bodies.filter(({ id }) => bodies.includes(id)).map(({ name }) => name)
  const { solves, floor } = trial
  const fromAmounts = [
    're-centre',
    'shank',
    'open hole',
    'minimum pack',
    'machine feet',
    'restraint',
  ]
  const where =
    names.length > 0 && candidate.kinds.some((kind) => fromAmounts.includes(kind))
      ? names.join(', ')
      : candidate.where
  return {
    kind: candidate.kinds.join(' + '),
    effort: candidate.effort,
    where,
    amount,
    solves,
    floor,
    cost: trial.cost ?? null,
    costWithEffort: trial.costWithEffort ?? null,
    worstShare: trial.worstShare ?? null,
    agree: candidate.agree,
    hours: [...candidate.hours],
    risk: candidate.risk,
    tight: [...(trial.tight ?? [])],
    sentence: sentenceOf(train, candidate, values, trial),
    change: [...change],
  }
}

function sentenceOf(
  train: Train,
  candidate: Candidate,
  values: readonly number[],
  {
    solves,
    floor,
    cost,
    still,
    train: then = train,
  }: Pick<Trial, 'solves' | 'floor'> & Partial<Trial>,
): string {
  const best = floor === null ? '' : `${bestShareText(floor, train.plan.share)} of tolerance`
  if (!solves) {
    const even = candidate.sized.length > 0 ? names[candidate.kinds[0] ?? 'hold'] : ''
    const lead = even === '' ? leadOf(candidate, values, then) : `${even}: ${candidate.where}.`
    return `${lead} Not enough by itself${best === '' ? '' : `: at best ${best}`}.`
  }
  const moves =
    still === true
      ? 'Then nothing needs to move.'
      : `Then ${toldText(cost ?? 0, train.units)} of ${costWord(train)} will do${best === '' ? '' : `; at best ${best}`}.`
  return `${leadOf(candidate, values, then)} ${moves}`
}

const names: Record<Candidate['kinds'][number], string> = {
  hold: 'Another machine fixed',
  share: 'More of the tolerance',
  guard: 'A smaller guard',
  intervals: 'The middle of the intervals of growth',
  'state tolerance': 'A wider tolerance in a state, up to twice',
  're-centre': 'Bolts re-centred',
  'minimum pack': 'Thinner packs',
  skid: 'The skid released',
  raise: 'Machines raised on plates',
  shank: 'Shanks reduced',
  dowel: 'Dowels pulled',
  'coupling tolerance': 'A wider tolerance of a coupling, up to twice',
  tilt: 'More tilt',
  'open hole': 'Holes opened',
  'machine feet': 'Feet or pads machined',
  restraint: 'Piping eased',
}
