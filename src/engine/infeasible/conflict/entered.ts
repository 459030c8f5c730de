import type { Train } from '../../../mechanics/train'
import type { RoomLimit } from '../elastic/limit'
import { holeRadius } from '../../../mechanics/holeRadius'

/** A limit as it was entered. */
export interface EnteredLimit {
  /** um, mrad for a tilt: the limit itself; 0 where it has no size, such as a key. */
  readonly size: number
  /** How far it is passed as found: standing still stays allowed, so that more must be entered before it gives. */
  readonly already: number
}

/** A limit of a body's room in a train, in um, or mrad for a tilt. */
export function entered(train: Train, member: RoomLimit): EnteredLimit {
  const body = train.bodies[member.body]
  if (!body) throw new RangeError(`no body ${member.body}`)
  switch (member.kind) {
    case 'tilt':
      return { size: body.tilt ?? 0, already: 0 }
    case 'restraint': {
      const range = body.restraints[member.restraint]?.[member.way] ?? [0, 0]
      return { size: Math.max(Math.abs(range[0]), Math.abs(range[1])), already: 0 }
    }
    case 'foot': {
      const { pack, lift = 0, hole } = body.feet[member.foot] ?? {}
      switch (member.limit) {
        case 'minimum pack':
          return pack ? { size: pack.min, already: Math.max(0, pack.min - pack.now) } : none
        case 'maximum pack':
          return pack?.max === undefined
            ? none
            : { size: pack.max, already: Math.max(0, pack.now - pack.max) }
        case 'lift':
          return { size: Math.max(0, lift), already: Math.max(0, -lift) }
        case 'hole': {
          if (!hole) return none
          const room = hole.clearance / 2 - train.plan.reserve
          return { size: room, already: holeRadius(hole, train.plan.reserve) - room }
        }
        case 'shim key':
        case 'side key':
          return none
      }
    }
  }
}

const none: EnteredLimit = { size: 0, already: 0 }
