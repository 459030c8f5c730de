import type { RemedyKind } from './answer'

interface Entry {
  /** 1 = minutes, 10 = weeks. */
  readonly effort: number
  readonly hours: readonly [low: number, high: number]
  readonly risk: string
  /** Cuts metal: proposed only after every other choice of held bodies was tried. */
  readonly machining?: true
}

/**
 * Effort, crew hours (clean-up included, waiting not) and main risk of every kind of remedy. Common
 * practice, no source: the plant's procedure and the makers' drawings govern.
 */
export const catalogue: Readonly<Record<RemedyKind, Entry>> = {
  hold: { effort: 1, hours: [0.5, 0.5], risk: 'a coupling that is right may be disturbed' },
  share: { effort: 1, hours: [0, 1], risk: 'a plan at the edge is lost to the first error' },
  guard: {
    effort: 1,
    hours: [0, 1],
    risk: 'a coupling that is out may pass for one that is in',
  },
  intervals: {
    effort: 1,
    hours: [0, 1],
    risk: 'growth that comes near an end of its interval may put a coupling out',
  },
  'state tolerance': { effort: 2, hours: [1, 1], risk: 'a soft limit tends to creep' },
  're-centre': { effort: 2, hours: [1, 3], risk: 'the bolt leans for a reason not yet seen' },
  'minimum pack': {
    effort: 2,
    hours: [1, 2],
    risk: 'a bare foot, or a lone thin shim; never where the base is worn',
  },
  skid: { effort: 3, hours: [4, 16], risk: 'lifting plan, level, everything piped on it travels' },
  raise: { effort: 4, hours: [8, 24], risk: 'pipes, shaft height, oil drains, longer bolts' },
  shank: {
    effort: 4,
    hours: [6, 12],
    risk: 'bolt strength: not below the root of the thread, ends with a radius',
  },
  dowel: {
    effort: 4,
    hours: [4, 12],
    risk: 'the position is lost; re-ream and dowel again only after the hot check',
  },
  'coupling tolerance': {
    effort: 4,
    hours: [2, 8],
    risk: 'what is meant for a while tends to stay: sign it with an end date',
  },
  tilt: { effort: 4, hours: [2, 8], risk: 'oil level in the sump, thrust, drains' },
  'open hole': {
    effort: 6,
    hours: [12, 30],
    risk: 'strength of the foot, chips, a washer that dishes',
    machining: true,
  },
  'machine feet': {
    effort: 7,
    hours: [24, 72],
    risk: 'transport, flatness, level',
    machining: true,
  },
  restraint: { effort: 8, hours: [40, 200], risk: 'weld, test, permits; prove pipe strain again' },
}
