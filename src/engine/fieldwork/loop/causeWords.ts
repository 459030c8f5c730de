import { fineText, signedText } from '../../../language/amounts'
import { hourName } from '../../../language/hours'
import { inSentence, listed } from '../../../language/names'
import { noMotion } from '../../../mechanics/motion'
import type { Body, Train } from '../../../mechanics/train'
import { largestMove } from '../steps/moves'
import type { FittedCause } from './causes'

/** One cause as people say it, with its amount; no full stop. */
export function causeWords(train: Train, { cause, by }: FittedCause): string {
  const { units } = train
  const at = cause.coupling === undefined ? '' : (train.couplings[cause.coupling]?.name ?? '')
  const set = cause.set === undefined ? '' : `set ${cause.set + 1} at `
  const body = train.bodies[cause.body ?? -1]
  const [amount = 0] = by
  switch (cause.kind) {
    case 'bracket':
      return `the bracket of ${set}${at}: on a stiff bar it would read ${signedText(-2 * amount, units)} more at 6 o'clock than was entered, or it gives`
    case 'dial':
      return cause.hour === undefined
        ? `one value of ${set}${at} alone`
        : `one dial alone: ${set}${at} at ${hourName(train, cause.hour)}, ${signedText(amount, units)} off`
    case 'sign of a dial':
      return `${set}${at} read with its sign turned`
    case 'distance':
      return `a distance${at === '' ? '' : ` at ${at}`}: angles changed ${percent(1 + amount)} of what was expected, as where dials stand another distance apart, or a face was read on another diameter, than entered`
    case 'stands off':
      return body ? standsOff(train, body, cause.way, by) : ''
    case 'foot': {
      const feet = (body?.rows[cause.row ?? 0]?.feet ?? []).map((f) => body?.feet[f]?.id ?? '')
      return `${feet.length > 1 ? 'feet' : 'foot'} ${listed(feet)} of ${nameOf(body)}: ${fineText(Math.abs(amount), units)} ${amount < 0 ? 'lower' : 'higher'} than the shims say, a springing foot or a pack that is not what was typed`
    }
    case 'part of the work':
      return `${body ? workOf(body, cause.way) : 'all that was done'} came to ${percent(1 + amount)}: feet that spring, amounts that are not what was typed, or a distance of feet`
    case 'wrong way':
      return `${body ? workOf(body, cause.way) : 'all that was done'} went the other way: a sign, the wrong side, or shims out where they should go in; move nothing before it is found`
  }
}

const percent = (part: number): string => `${Math.round(part * 100)} %`

const nameOf = (body: Body | undefined): string => inSentence(body?.name ?? '')

const workOf = (body: Body, way: 'sideways' | 'up and down' | undefined): string =>
  way === undefined
    ? `the moves of ${nameOf(body)}`
    : `the ${way === 'sideways' ? 'slides' : 'shims'} of ${nameOf(body)}`

function standsOff(
  train: Train,
  body: Body,
  way: 'sideways' | 'up and down' | undefined,
  by: readonly number[],
): string {
  const [a = 0, b = 0, c = 0, d = 0] = by
  const sideways = { ...noMotion, ty: a, sy: b }
  const upright =
    way === 'up and down' ? { ...noMotion, tz: a, sz: b } : { ...noMotion, tz: c, sz: d }
  const parts = [
    ...(way === 'up and down'
      ? []
      : [`${fineText(largestMove(body, sideways), train.units)} sideways`]),
    ...(way === 'sideways'
      ? []
      : [`${fineText(largestMove(body, upright), train.units)} up or down`]),
  ]
  const how = body.held ? 'it walked though it is fixed' : 'bumped, or not where it was typed to be'
  return `${nameOf(body)} stands elsewhere, at a foot by up to ${listed(parts)}: ${how}`
}
