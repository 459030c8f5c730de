import type { Train } from '../../../mechanics/train'
import type { ElasticLimit } from '../elastic/limit'
import type { DualWeight } from '../elastic/dualWeights'
import { footLimitWords } from '../../../language/footLimitWords'
import { wayInWords, type Way } from '../../../language/sides'
import { inSentence } from '../../../language/names'
import { footToward, restraintToward } from '../../plan/bindingLimit'
import type { ConflictLimit, ConflictMember } from './answer'

/** The way in which a member presses, from the duals that show the conflict. */
export function towardOf(member: ElasticLimit, press: DualWeight | undefined): Way | undefined {
  const side = press?.most?.side === 'lower' ? 'lower' : 'upper'
  switch (member.kind) {
    case 'foot':
      return footToward(footLimitWords[member.limit].presses, side, press?.toward)
    case 'restraint':
      return restraintToward[member.way][side]
    case 'tilt':
      return tiltToward[side]
    case 'coupling':
    case 'held':
      return undefined
  }
}

const tiltToward = { lower: 'down', upper: 'up' } as const

/** The same in words; empty where a member presses in no way of its own. */
export function pressedWay(train: Train, member: ElasticLimit, way: Way | undefined): string {
  if (member.kind === 'tilt') return `${way === 'down' ? 'falling' : 'rising'} to the right`
  return way === undefined ? '' : wayInWords(train, way)
}

/** What limits, and where it is. */
export function memberWords(
  train: Train,
  member: ElasticLimit,
  press: DualWeight | undefined,
): Pick<ConflictMember, 'limit' | 'where'> {
  const side = press?.most?.side === 'lower' ? 'lower' : 'upper'
  if (member.kind === 'coupling') {
    const { id: coupling = '', name = '' } = train.couplings[member.coupling] ?? {}
    const state = train.states[member.state]
    const meaning = press?.most?.meaning
    return {
      limit: {
        kind: 'coupling',
        coupling,
        state: state?.id ?? '',
        ...(meaning?.fact === 'tolerance' && {
          presses: { what: meaning.what, way: meaning.way },
        }),
      },
      where: `${name}, ${state?.name ?? ''}`,
    }
  }
  const at = train.bodies[member.body]
  const { id: body = '', name = '' } = at ?? {}
  const way = pressedWay(train, member, towardOf(member, press))
  switch (member.kind) {
    case 'held':
      return { limit: { kind: 'held', body }, where: name }
    case 'tilt':
      return { limit: { kind: 'tilt', body, toward: tiltToward[side] }, where: `${name}, ${way}` }
    case 'restraint': {
      const restraint = at?.restraints[member.restraint]?.id ?? ''
      const toward = restraintToward[member.way][side]
      return {
        limit: { kind: 'restraint', body, restraint, way: member.way, toward },
        where: `${name} ${restraint}, ${way}`,
      }
    }
    case 'foot': {
      const foot = at?.feet[member.foot]?.id ?? ''
      const { limit } = member
      return {
        limit: { kind: 'foot', limit, body, foot, toward: towardOf(member, press) },
        where: `${name} foot ${foot}, ${way}`,
      }
    }
  }
}

/** What a member is called: tolerance, restraint, tilt, held, or the limit of a foot. */
export function limitName(limit: ConflictLimit): string {
  switch (limit.kind) {
    case 'foot':
      return limit.limit
    case 'coupling':
      return 'tolerance'
    case 'restraint':
    case 'tilt':
    case 'held':
      return limit.kind
  }
}

/** A member that gives room, as the subject of "lacks": "the feet of the turbine". */
export function ownerInWords(train: Train, members: readonly ElasticLimit[]): string {
  const [first] = members
  if (first === undefined || first.kind === 'coupling') return ''
  const body = train.bodies[first.body]
  const name = inSentence(body?.name ?? '')
  switch (first.kind) {
    case 'foot':
      return footLimitWords[first.limit].keyed ? `the keyed feet of ${name}` : `the feet of ${name}`
    case 'restraint': {
      const ids = members.flatMap((member) =>
        member.kind === 'restraint' ? (body?.restraints[member.restraint]?.id ?? []) : [],
      )
      return `${[...new Set(ids)].join(' and ')} of ${name}`
    }
    case 'tilt':
      return `the tilt of ${name}`
    case 'held':
      return name
  }
}
