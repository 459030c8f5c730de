import { fineText, slopeText, toldNought, toldText, underDigits } from '../../../language/amounts'
import type { Body, Train } from '../../../mechanics/train'
import { footLimitWords } from '../../../language/footLimitWords'
import { shimVerb } from '../../../language/recipes'
import { towardSide } from '../../../language/sides'
import { capital, counted, inSentence, listed } from '../../../language/names'
import type { BreakAnswer, StepFootAnswer } from './answer'
import type { Instead } from './instead'
import type { LiftPath } from './liftPath'
import type { LimitPassed } from './limits'
import type { StepPath } from './path'

/** Changes of feet (um), + up, toward 3 o'clock, to the right. */
interface Change {
  readonly foot: string
  readonly by: number
}

/** "put in 0.35 mm under feet 1 and 2; take out 0.10 mm under foot 3", feet of one amount together. */
function amounts(
  train: Train,
  changes: readonly Change[],
  say: (amount: string, by: number, feet: string) => string,
): string[] {
  const groups = new Map<string, { by: number; feet: string[] }>()
  for (const { foot, by } of changes) {
    if (toldNought(by, train.units)) continue
    const amount = toldText(by, train.units)
    const group = groups.get(amount) ?? { by, feet: [] }
    group.feet.push(foot)
    groups.set(amount, group)
  }
  return [...groups.values()].map(({ by, feet }) =>
    say(
      toldText(Math.abs(by), train.units),
      by,
      `${feet.length === 1 ? 'foot' : 'feet'} ${listed(feet)}`,
    ),
  )
}

/** What to shim, and how as more sentences; where no amount shows, that nothing is to be done. */
export function shimWords(train: Train, body: Body, changes: readonly Change[], how = ''): string {
  const parts = amounts(
    train,
    changes,
    (amount, by, feet) => `${shimVerb(by)} ${amount} under ${feet}`,
  )
  return parts.length === 0
    ? `${capital(inSentence(body.name))}: shims ${underDigits(train.units)} at every foot, thinner than any plate; leave its packs as they are.`
    : `Shim ${inSentence(body.name)}: ${parts.join('; ')}.${how}`
}

/** The same of a slide. */
export function slideWords(train: Train, body: Body, changes: readonly Change[], how = ''): string {
  const parts = amounts(
    train,
    changes,
    (amount, by, feet) => `${feet} ${amount} ${towardSide(train, by)}`,
  )
  return parts.length === 0
    ? `${capital(inSentence(body.name))}: slides ${underDigits(train.units)} at every foot, less than a dial shows; leave it where it stands.`
    : `Slide ${inSentence(body.name)}: ${parts.join('; ')}.${how}`
}

export const axialWords = (train: Train, body: Body, by: number): string =>
  `Move ${inSentence(body.name)} ${fineText(Math.abs(by), train.units)} along the train, to the ${by > 0 ? 'right' : 'left'}.`

/** How the ends are lifted, as one more sentence; nothing where nothing is. */
export function liftWords({ units }: Train, { first, poses }: LiftPath): string {
  const moves = poses.length - 1
  if (first === 'together') return moves > 1 ? ' Jack both ends together.' : ''
  const other = first === 'left' ? 'right' : 'left'
  if (poses.every(({ ends }) => ends[other] === 0)) return ` Jack the ${first} end alone.`
  const ahead = Math.max(...poses.map(({ ends }) => Math.abs(ends.right - ends.left)))
  return ` Jack one end at a time, the ${first} end first, none more than ${toldText(ahead, units)} ahead of the other.`
}

/** In how many moves a slide is made, as one more sentence; nothing for one move of one end. */
export function stopWords(
  train: Train,
  { stops, first }: StepPath,
  each: number,
  bothEnds: boolean,
): string {
  const pieces =
    stops > 1
      ? `in ${counted(stops, 'move', 'moves')} of at most ${toldText(each, train.units)}`
      : ''
  if (!bothEnds) return pieces === '' ? '' : ` ${capital(pieces)}.`
  if (first === 'together')
    return pieces === '' ? ' Both ends together.' : ` Both ends together, ${pieces}.`
  const other = first === 'left' ? 'right' : 'left'
  return pieces === ''
    ? ` The ${first} end first, then the ${other} end.`
    : ` ${capital(pieces)}: the ${first} end, then the ${other} end, before the next move.`
}

/** A limit that a step passes, with its words. */
export function breakAnswer(
  train: Train,
  step: string,
  passed: LimitPassed,
  { words: instead, stop, slip }: Instead & { readonly slip?: number },
): BreakAnswer {
  const tilt = passed.limit === 'tilt'
  const amount = tilt ? slopeText(passed.by, train.units) : fineText(passed.by, train.units)
  const where = whereOf(train, passed)
  return {
    step,
    limit: passed.limit,
    where,
    by: passed.by,
    quantity: tilt ? 'slope' : 'fine',
    words:
      passed.limit === 'shaft ends'
        ? `${where}: the shaft ends would meet, by ${amount}, on the way.`
        : passed.limit === 'stage'
          ? `${where}: one end goes ahead of the other by ${amount} more than the ${fineText(train.plan.stage, train.units)} it may.`
          : `${where}: ${limitClause(passed.limit)} is passed by ${amount} on the way.`,
    instead,
    ...(slip !== undefined && { slip }),
    ...(stop && { stop: { ...stop, then: [...stop.then] } }),
  }
}

const limitClause = (limit: Exclude<LimitPassed['limit'], 'shaft ends' | 'stage'>): string =>
  limit === 'tilt'
    ? 'the tilt limit'
    : limit === 'restraint'
      ? 'what the flange may be carried'
      : footLimitWords[limit].step

function whereOf(train: Train, { body, foot, restraint, way, coupling }: LimitPassed): string {
  if (coupling !== undefined) return train.couplings[coupling]?.name ?? ''
  const name = train.bodies[body]?.name ?? ''
  if (foot !== undefined) return `${name}, foot ${foot}`
  return restraint === undefined ? name : `${name}, ${restraint}, ${way ?? ''}`
}

/** What the feet of a step get in one way. */
export const changesOf = (feet: readonly StepFootAnswer[], way: 'shim' | 'side'): Change[] =>
  feet.map((foot) => ({ foot: foot.foot, by: foot[way] ?? 0 }))
