import type { Train } from '../../../mechanics/train'
import type { ElasticLimit } from '../elastic/limit'
import type { DualWeight } from '../elastic/dualWeights'
import { footLimitWords, type Presses } from '../../../language/footLimitWords'
import { wayInWords, type Way } from '../../../language/sides'
import { inSentence } from '../../../language/names'
import type { ConflictMember } from './answer'

/** The way in which a member presses, from the duals that show the conflict. */
export function towardOf(member: ElasticLimit, press: DualWeight | undefined): Way | undefined {
  const lower = press?.most?.side === 'lower'
  switch (member.kind) {
    case 'foot':
      return towardOfFoot(footLimitWords[member.limit].presses, lower, press?.toward)
    case 'restraint': {
      const ways = {
        axial: ['left', 'right'],
        side: ['nine', 'three'],
        rise: ['down', 'up'],
      } as const
      return ways[member.way][lower ? 0 : 1]
    }
    case 'tilt':
      return lower ? 'down' : 'up'
    case 'coupling':
    case 'held':
      return undefined
  }
}

function towardOfFoot(
  presses: Presses,
  lower: boolean,
  circle: DualWeight['toward'],
): Way | undefined {
  switch (presses) {
    case 'down':
    case 'up':
    case 'nine':
    case 'three':
      return presses
    case 'down or up':
      return lower ? 'down' : 'up'
    case 'nine or three':
      return lower ? 'nine' : 'three'
    case 'round': {
      if (!circle) return undefined
      const { u, w } = circle
      if (Math.abs(u) > Math.abs(w)) return u > 0 ? 'right' : 'left'
      return w > 0 ? 'three' : 'nine'
    }
  }
}

/** The same in words; empty where a member presses in no way of its own. */
export function pressedWay(train: Train, member: ElasticLimit, way: Way | undefined): string {
  if (member.kind === 'tilt') return `${way === 'down' ? 'falling' : 'rising'} to the right`
  return way === undefined ? '' : wayInWords(train, way)
}

/** What limits, where it is, and whose it is. */
export function memberWords(
  train: Train,
  member: ElasticLimit,
  press: DualWeight | undefined,
): Pick<ConflictMember, 'limit' | 'where' | 'part'> {
  const toward = towardOf(member, press)
  if (member.kind === 'coupling') {
    const coupling = train.couplings[member.coupling]
    const state = train.states[member.state]
    const meaning = press?.most?.meaning
    return {
      limit: 'tolerance',
      where: `${coupling?.name ?? ''}, ${state?.name ?? ''}`,
      part: {
        coupling: coupling?.id ?? '',
        state: state?.id ?? '',
        ...(meaning?.fact === 'tolerance' && { what: meaning.what, way: meaning.way }),
      },
    }
  }
  const body = train.bodies[member.body]
  const name = body?.name ?? ''
  const part = { body: body?.id ?? '', ...(toward && { toward }) }
  const way = pressedWay(train, member, toward)
  switch (member.kind) {
    case 'held':
      return { limit: 'held', where: name, part }
    case 'tilt':
      return { limit: 'tilt', where: `${name}, ${way}`, part }
    case 'restraint': {
      const restraint = body?.restraints[member.restraint]?.id ?? ''
      return {
        limit: 'restraint',
        where: `${name} ${restraint}, ${way}`,
        part: { ...part, restraint, way: member.way },
      }
    }
    case 'foot': {
      const foot = body?.feet[member.foot]?.id ?? ''
      return {
        limit: member.limit,
        where: `${name} foot ${foot}, ${way}`,
        part: { ...part, foot },
      }
    }
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
