import { tol } from '../mechanics/tolerances'
import { fineText } from './amounts'
import type { FootLimit } from '../mechanics/footLimits'
import type { Foot, Train } from '../mechanics/train'

/** Which way a limit presses its foot back from: one way, either way, or any way in its plane. */
export type Presses = 'down' | 'up' | 'down or up' | 'nine' | 'three' | 'nine or three' | 'round'

/** What can be done about a limit, by the module under `remedies` that tries it. */
type LimitRemedy = 'packs' | 'raise' | 'rooms' | 'dowel'

/** A foot that stands on a limit, in one word. */
export type Bound = 'bolt-bound' | 'base-bound' | 'top-bound' | 'lift-bound'

export interface FootLimitWords {
  readonly presses: Presses
  /** Why it is where it is, behind an amount: "base-bound, packs at their minimum". */
  readonly reason: string
  /** Whether its feet are keyed. */
  readonly keyed?: true
  /** What its rows in an exported program are. */
  readonly program: string
  /** What a machine does at it, after the machine's name; `way` is " toward the river" or "". */
  readonly floor: (way: string) => string
  /** What there is too little of; `its` is "its" or "their". Left out where no length makes it wider. */
  readonly lacks?: (its: string) => string
  /** What a step of the work passes. */
  readonly step: string
  /** What more of it would be, at "foot 2 of the gear"; `way` is "toward the river" or "". */
  readonly more: (foot: string, way: string) => string
  /** Whether it is named with the way in which it presses. */
  readonly tellsWay?: true
  /** What a foot that stands on it is called on its card. */
  readonly bound?: Bound
  readonly remedies: readonly LimitRemedy[]
  /** What is to be known where it is passed as found; `name` is "Gear foot 2". */
  readonly already: (train: Train, foot: Foot, name: string) => Already | undefined
}

interface Already {
  /** The figure of the foot that it stands in. */
  readonly field: string
  readonly what: string
}

const packs = 'shim packs between their limits (change of pack, thicker is +)'

/** What is said of every limit of a foot, wherever it is said. */
export const footLimitWords: Readonly<Record<FootLimit, FootLimitWords>> = {
  'minimum pack': {
    presses: 'down',
    reason: 'base-bound, packs at their minimum',
    program: packs,
    floor: () => 'has no more shim to take out',
    lacks: () => 'of shim to take out',
    step: 'the minimum pack',
    more: (foot) => `less pack allowed under ${foot}`,
    bound: 'base-bound',
    remedies: ['packs', 'raise'],
    already: ({ units }, { pack }, name) =>
      pack && pack.now < pack.min
        ? {
            field: 'pack',
            what: `pack of ${name} is ${fineText(pack.now, units)}, already under its minimum ${fineText(pack.min, units)}: nothing may come out`,
          }
        : undefined,
  },
  'maximum pack': {
    presses: 'up',
    reason: 'top-bound, packs at their maximum',
    program: packs,
    floor: () => 'has no room for more shim',
    lacks: () => 'of room for shim',
    step: 'the maximum pack',
    more: (foot) => `more pack allowed under ${foot}`,
    bound: 'top-bound',
    remedies: ['raise'],
    already: ({ units }, { pack }, name) =>
      pack?.max !== undefined && pack.now > pack.max
        ? {
            field: 'pack',
            what: `pack of ${name} is ${fineText(pack.now, units)}, already over its maximum ${fineText(pack.max, units)}: nothing may be added`,
          }
        : undefined,
  },
  lift: {
    presses: 'up',
    reason: 'no bolt left to rise on',
    program: 'most a foot may rise from now',
    floor: () => 'can rise no higher on its bolts',
    lacks: (its) => `of height to rise on ${its} bolts`,
    step: 'the lift limit',
    more: (foot) => `more lift at ${foot}`,
    bound: 'lift-bound',
    remedies: ['raise'],
    already: ({ units }, { lift = 0 }, name) =>
      lift < 0
        ? {
            field: 'lift',
            what: `${name} already stands ${fineText(-lift, units)} above its highest: it may not rise`,
          }
        : undefined,
  },
  hole: {
    presses: 'round',
    reason: 'bolt-bound, bolts at their holes',
    program: 'bolts in their holes, tangents of the true circles',
    floor: (way) => `meets its bolts${way}`,
    lacks: (its) => `of room at ${its} bolts`,
    step: 'the room between bolt and hole',
    more: (foot, way) => `more room ${way} at ${foot}`,
    tellsWay: true,
    bound: 'bolt-bound',
    remedies: ['rooms'],
    already: ({ units, plan }, { hole }, name) => {
      if (!hole) return undefined
      const room = hole.clearance / 2 - Math.hypot(hole.x, hole.y)
      if (room <= tol.dust)
        return {
          field: 'hole',
          what: `bolt of ${name} already touches its hole: it may stay there and move away, no further`,
        }
      return room < plan.reserve - tol.dust
        ? {
            field: 'hole',
            what: `bolt of ${name} has ${fineText(room, units)} of room, less than the ${fineText(plan.reserve, units)} to keep: it may stay there and move away, no further`,
          }
        : undefined
    },
  },
  'shim key': {
    presses: 'down or up',
    reason: 'may not be shimmed',
    keyed: true,
    program: 'feet that cannot be shimmed',
    floor: () => 'has feet that cannot be shimmed',
    step: 'a foot that cannot be shimmed',
    more: (foot) => `of shim allowed at the keyed ${foot}`,
    remedies: ['dowel'],
    already: () => undefined,
  },
  'side key': {
    presses: 'nine or three',
    reason: 'may not slide',
    keyed: true,
    program: 'feet that cannot slide',
    floor: () => 'has feet that cannot slide',
    step: 'a foot that cannot slide',
    more: (foot) => `of slide allowed at the keyed ${foot}`,
    remedies: ['dowel'],
    already: () => undefined,
  },
}
