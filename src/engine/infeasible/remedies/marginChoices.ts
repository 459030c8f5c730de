import { tol } from '../../../mechanics/tolerances'
import { slopeSign } from '../../../mechanics/units'
import { askedBelow } from '../../../language/roundedAmounts'
import { tidy } from '../../../language/tidy'
import { programUnit } from '../../lp/program'
import { inSentence } from '../../../language/names'
import { candidateOf, type Candidate, type RemedyContext } from './candidate'
import { fieldAt } from './change'
import { indexOf } from './sizes'
import { inConflict } from './tolerances'

/** Step and most of a wider tilt (mrad). */
const tilt = { step: 0.05, most: 2 }

/**
 * More of the tolerance than was asked for, up to all of it: no limit is widened, the margin is spent.
 * @param floor least share of tolerance that is reached; null where none is known
 */
export function shareChoice(context: RemedyContext, floor: number | null): Candidate | undefined {
  const { share } = context.train.plan
  const needed = floor === null ? Infinity : Math.ceil(floor * 100 - tol.wholeStep) / 100
  if (needed > 1 || needed <= share) return undefined
  return candidateOf('share', {
    where: 'tolerance used',
    changes: [{ at: 'plan.share', from: fieldAt(context.document, 'plan.share'), to: needed }],
    agree: 'the responsible engineer',
    lead: () =>
      `Plan with ${tidy(needed * 100)} % of tolerance instead of ${askedBelow(share, needed)}${needed > tol.noRoomFrom ? ': no room for error' : ''}.`,
  })
}

/**
 * The middle of each interval of growth in place of every value within: no limit is widened, a value away from the
 * middle is left to chance.
 */
export function intervalsChoice({ train, document }: RemedyContext): Candidate | undefined {
  if (!train.plan.worst) return undefined
  return candidateOf('intervals', {
    where: 'intervals of growth',
    changes: [{ at: 'plan.worst', from: fieldAt(document, 'plan.worst'), to: false }],
    agree: 'the responsible engineer',
    lead: () =>
      'Plan for the middle of each interval of growth instead of for every value within, or measure the growth and enter narrower ones.',
  })
}

/** A machine tilted by more than was allowed. */
export function tiltChoices(context: RemedyContext): Candidate[] {
  const { train, model, document } = context
  return train.bodies.flatMap((body, b) => {
    const index = indexOf(model, { kind: 'tilt', body: b })
    if (index === undefined || inConflict(context, [index]).length === 0) return []
    const arm = Math.max(1, ...body.feet.map((foot) => Math.abs(foot.x - body.x0)))
    const perMrad = arm / programUnit
    const at = `${body.place}.tilt`
    const then = (value: number) => tidy((body.tilt ?? 0) + value / perMrad)
    return [
      candidateOf('tilt', {
        where: body.name,
        sized: [
          {
            give: {
              name: `more tilt ${body.id}`,
              least: 0,
              most: tilt.most * perMrad,
              price: 1,
              onRow: ({ meaning, upper }) =>
                meaning.fact !== 'tilt' || meaning.body !== b ? 0 : Number.isFinite(upper) ? -1 : 1,
            },
            members: [index],
            step: tilt.step * perMrad,
            amount: (value) => ({
              where: body.name,
              part: { body: body.id },
              value: value / perMrad,
              quantity: 'slope',
            }),
            changes: (value) => [{ at, from: fieldAt(document, at), to: then(value) }],
          },
        ],
        agree: `the maker of ${body.name}, in writing`,
        lead: ([amount]) =>
          `Let ${inSentence(body.name)} be tilted by ${tidy((body.tilt ?? 0) + (amount?.value ?? 0))} instead of ${body.tilt ?? 0} ${slopeSign(train.units)}.`,
      }),
    ]
  })
}
