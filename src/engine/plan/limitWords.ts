import { footLimitWords, type Presses } from '../../language/footLimitWords'
import { limitSides } from '../../mechanics/footLimits'
import type { Train } from '../../mechanics/train'
import type { BindingAnswer } from './answer'
import type { BindingGroup } from './bindingGroups'

/** What the words of a limit are made of. */
export type LimitSide = Pick<BindingGroup, 'meaning' | 'side' | 'toward'>

/** A binding limit in words, with the ids of the part it belongs to. */
export function limitWords(
  train: Train,
  group: LimitSide,
): Pick<BindingAnswer, 'limit' | 'where' | 'part'> {
  const { meaning, side } = group
  if (meaning.fact === 'tolerance') {
    const coupling = train.couplings[meaning.coupling]
    const state = train.states[meaning.state]
    return {
      limit: meaning.what,
      where: `${coupling?.name ?? ''}, ${state?.name ?? ''}`,
      part: {
        coupling: coupling?.id ?? '',
        state: state?.id ?? '',
        what: meaning.what,
        way: meaning.way,
      },
    }
  }
  const body = train.bodies[meaning.body]
  const name = body?.name ?? ''
  const id = body?.id ?? ''
  if ('foot' in meaning) {
    const foot = body?.feet[meaning.foot]?.id ?? ''
    const where = `${name} foot ${foot}`
    const part = { body: id, foot }
    if (meaning.fact === 'shim') return { limit: meaning.fact, where, part }
    const limit = limitSides[meaning.fact][side]
    const { tellsWay, presses } = footLimitWords[limit]
    return { limit, where: tellsWay ? `${where}, ${pressed(train, presses, group)}` : where, part }
  }
  switch (meaning.fact) {
    case 'tilt':
      return { limit: 'tilt', where: name, part: { body: id } }
    case 'restraint': {
      const restraint = body?.restraints[meaning.restraint]
      const sides = ways(train)[meaning.way]
      return {
        limit: 'restraint',
        where: `${name} ${restraint?.id ?? ''}, ${side === 'lower' ? sides[0] : sides[1]}`,
        part: { body: id, restraint: restraint?.id ?? '', way: meaning.way },
      }
    }
    case 'slide':
    case 'axial':
      return { limit: meaning.fact, where: name, part: { body: id } }
  }
}

const ways = (train: Train) => ({
  axial: ['toward the left end', 'toward the right end'] as const,
  side: [train.sides.nine, train.sides.three] as const,
  rise: ['downward', 'upward'] as const,
})

/** Which way the foot would go if its limit let it: the way it is pressed. */
function pressed(train: Train, presses: Presses, { side, toward }: LimitSide): string {
  const end = side === 'lower' ? 0 : 1
  switch (presses) {
    case 'round': {
      const { u, w } = toward ?? { u: 0, w: 0 }
      if (Math.abs(u) > Math.abs(w)) return ways(train).axial[u > 0 ? 1 : 0]
      return ways(train).side[w > 0 ? 1 : 0]
    }
    case 'nine':
    case 'three':
    case 'nine or three':
      return ways(train).side[end]
    case 'down':
    case 'up':
    case 'down or up':
      return ways(train).rise[end]
  }
}
