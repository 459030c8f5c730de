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
  const foot = body?.feet[meaning.foot]?.id ?? ''
  const where = `${name} foot ${foot}`
  const part = { body: id, foot }
  switch (meaning.fact) {
    case 'pack':
      return { limit: side === 'lower' ? 'minimum pack' : 'maximum pack', where, part }
    case 'hole':
      return { limit: 'hole', where: `${where}, ${pressed(train, group)}`, part }
    default:
      return { limit: meaning.fact, where, part }
  }
}

const ways = (train: Train) => ({
  axial: ['toward the left end', 'toward the right end'] as const,
  side: [train.sides.nine, train.sides.three] as const,
  rise: ['downward', 'upward'] as const,
})

/** Which way the foot would go if its hole let it: the way it is pressed. */
function pressed(train: Train, group: LimitSide): string {
  const { u, w } = group.toward ?? { u: 0, w: 0 }
  if (Math.abs(u) > Math.abs(w)) return ways(train).axial[u > 0 ? 1 : 0]
  return w > 0 ? train.sides.three : train.sides.nine
}
