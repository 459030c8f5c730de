import { footLimitWords, type Presses } from '../../language/footLimitWords'
import type { Way } from '../../language/sides'
import { limitSides } from '../../mechanics/footLimits'
import type { Train } from '../../mechanics/train'
import type { CircleDirection } from '../lp/duals'
import type { BindingLimit } from './answer'
import type { BindingGroup } from './bindingGroups'

/** A limit of the program with the side that is leaned on. */
export type LimitSide = Pick<BindingGroup, 'meaning' | 'side' | 'toward' | 'others'>

/** The limit that an answer leans on, by the ids of its part. */
export function bindingLimit(
  train: Train,
  { meaning, side, toward, others }: LimitSide,
): BindingLimit {
  if (meaning.fact === 'tolerance') {
    const { what, way } = meaning
    const coupling = train.couplings[meaning.coupling]?.id ?? ''
    return { kind: 'check', coupling, state: train.states[meaning.state]?.id ?? '', what, way }
  }
  if (meaning.fact === 'least') {
    const { what, way } = meaning
    const coupling = train.couplings[meaning.coupling]?.id ?? ''
    return { kind: 'least', coupling, state: train.states[meaning.state]?.id ?? '', what, way }
  }
  const at = train.bodies[meaning.body]
  const body = at?.id ?? ''
  if ('foot' in meaning && meaning.fact !== 'shim') {
    const limit = limitSides[meaning.fact][side]
    return {
      kind: 'foot',
      limit,
      body,
      foot: at?.feet[meaning.foot]?.id ?? '',
      ...(others && { others: others.flatMap((foot) => at?.feet[foot]?.id ?? []) }),
      toward: footToward(footLimitWords[limit].presses, side, toward),
    }
  }
  switch (meaning.fact) {
    case 'tilt':
      return { kind: 'tilt', body }
    case 'restraint': {
      const { way } = meaning
      const restraint = at?.restraints[meaning.restraint]?.id ?? ''
      return { kind: 'restraint', body, restraint, way, toward: restraintToward[way][side] }
    }
    case 'shim':
    case 'slide':
    case 'axial':
      throw new RangeError(`${meaning.fact} is a move and no limit`)
  }
}

/** Which way a foot would go if its limit let it; undefined where no tangent of a circle says so. */
export function footToward(
  presses: Presses,
  side: 'lower' | 'upper',
  circle: CircleDirection | undefined,
): Way | undefined {
  switch (presses) {
    case 'down':
    case 'up':
    case 'nine':
    case 'three':
      return presses
    case 'down or up':
      return side === 'lower' ? 'down' : 'up'
    case 'nine or three':
      return side === 'lower' ? 'nine' : 'three'
    case 'round':
      return circle && circleToward(circle)
  }
}

/** The way in which a hole is pressed: its u is along the train, its w to the side. */
export function circleToward({ u, w }: CircleDirection): Way {
  if (Math.abs(u) > Math.abs(w)) return u > 0 ? 'right' : 'left'
  return w > 0 ? 'three' : 'nine'
}

/** The way in which a restrained point would be carried further, by the side of its limit. */
export const restraintToward = {
  axial: { lower: 'left', upper: 'right' },
  side: { lower: 'nine', upper: 'three' },
  rise: { lower: 'down', upper: 'up' },
} as const satisfies Record<string, Record<'lower' | 'upper', Way>>
