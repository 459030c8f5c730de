import { noMotion, type Motion } from '../../../mechanics/motion'
import type { Train } from '../../../mechanics/train'
import type { Micrometres } from '../../../mechanics/units'
import { shaftEnds } from '../../../mechanics/shaftEnds'

/** Where somebody put the machines by hand: own motions from as found, by body id, in um and mrad. */
export interface HandPlan {
  readonly motions: Readonly<Record<string, Motion>>
  /** Bodies that were put there by hand; the others stand where a plan had them. */
  readonly touched: readonly string[]
}

export type HandDirection = 'rise' | 'side'
export type HandEnd = 'left' | 'right' | 'both'

/** Motions of all bodies in the train's order; what the hand plan does not know stands as found. */
export const handMotions = (train: Train, { motions }: HandPlan): Motion[] =>
  train.bodies.map(({ id, held }) => (held ? noMotion : (motions[id] ?? noMotion)))

/** Ends of a machine's shaft that can be carried up or down, or to a side, by what the machine is free to do. */
export function handEnds(train: Train, machine: number, way: HandDirection): readonly HandEnd[] {
  const body = train.machines[machine]
  if (!body || body.held) return []
  const [shift, turn] =
    way === 'rise' ? [body.may.rise, body.may.pitch] : [body.may.slide, body.may.yaw]
  if (!shift) return []
  return turn ? ['left', 'both', 'right'] : ['both']
}

/**
 * Carries one end of a machine's shaft by an amount while the other stays, or both alike.
 * @param by + is up, or toward 3 o'clock (um)
 */
export function carriedEnd(
  train: Train,
  machine: number,
  way: HandDirection,
  end: HandEnd,
  by: Micrometres,
  motion: Motion,
): Motion {
  const body = train.machines[machine]
  if (!body) throw new RangeError(`no machine ${machine}`)
  const [shift, turn] = way === 'rise' ? (['tz', 'sz'] as const) : (['ty', 'sy'] as const)
  if (end === 'both') return { ...motion, [shift]: motion[shift] + by }
  const [left, right] = shaftEnds(train, machine)
  const [at, other] = end === 'left' ? [left, right] : [right, left]
  if (at === other) return { ...motion, [shift]: motion[shift] + by }
  const slope = by / (at - other)
  return {
    ...motion,
    [shift]: motion[shift] + slope * (body.x0 - other),
    [turn]: motion[turn] + slope,
  }
}
