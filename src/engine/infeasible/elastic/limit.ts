import { limitSides, type FootLimit } from '../../../mechanics/footLimits'
import type { Meaning } from '../../lp/program'

/**
 * One thing that a train's plan must respect, small enough to be given up by itself. Indices are
 * those of the train. What a body is not free to do at all, its readings and its growth are no
 * members: they are what the train is.
 */
export type ElasticLimit =
  | { readonly kind: 'coupling'; readonly coupling: number; readonly state: number }
  | {
      readonly kind: 'foot'
      readonly body: number
      readonly foot: number
      readonly limit: FootLimit
    }
  | {
      readonly kind: 'restraint'
      readonly body: number
      readonly restraint: number
      readonly way: 'axial' | 'side' | 'rise'
    }
  | { readonly kind: 'tilt'; readonly body: number }
  | { readonly kind: 'held'; readonly body: number }

export type Side = 'lower' | 'upper'

/** The member that a row (with the side it bounds) or a circle belongs to. */
export function elasticLimitOf(meaning: Meaning, side: Side): ElasticLimit {
  if ('foot' in meaning && meaning.fact !== 'shim') {
    const { fact, body, foot } = meaning
    return { kind: 'foot', body, foot, limit: limitSides[fact][side] }
  }
  switch (meaning.fact) {
    case 'tolerance':
      return { kind: 'coupling', coupling: meaning.coupling, state: meaning.state }
    case 'restraint': {
      const { body, restraint, way } = meaning
      return { kind: 'restraint', body, restraint, way }
    }
    case 'tilt':
      return { kind: 'tilt', body: meaning.body }
    case 'least':
      throw new RangeError('a least angle is asked of a train that has a plan, and is no member')
    case 'shim':
    case 'slide':
    case 'axial':
      throw new RangeError(`${meaning.fact} is a move and no limit`)
  }
}

/** The same member always has the same key. */
export function keyOf(member: ElasticLimit): string {
  switch (member.kind) {
    case 'coupling':
      return `coupling ${member.coupling} ${member.state}`
    case 'foot':
      return `foot ${member.body} ${member.foot} ${member.limit}`
    case 'restraint':
      return `restraint ${member.body} ${member.restraint} ${member.way}`
    case 'tilt':
    case 'held':
      return `${member.kind} ${member.body}`
  }
}

/** What limits the moves of a body, as opposed to couplings and to being held. */
export type RoomLimit = Extract<ElasticLimit, { kind: 'foot' | 'restraint' | 'tilt' }>

export const isRoom = (member: ElasticLimit): member is RoomLimit =>
  member.kind === 'foot' || member.kind === 'restraint' || member.kind === 'tilt'
