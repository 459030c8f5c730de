import type { Foot } from './train'

/**
 * Every limit of a foot as the train file's contract has it, by the word that answers use: the one such
 * table of the tests. Written apart from the engine, from the contract alone.
 */
interface FootLimit {
  /** What the second builder calls it when it leaves it out. */
  readonly term: string
  /** Where it keeps the foot's own move: up (z) or toward 3 o'clock (y), fine units; undefined where it has none. */
  readonly band?: (foot: Foot) => Band | undefined
  /** Leaves a part of the room that the foot has from where it stands; undefined where there is none to take. */
  readonly tighten: (foot: Foot) => ((part: number) => void) | undefined
  /** Gives more room by an amount, where a number of the file does. `reserve` is the room to keep around a bolt. */
  readonly loosen: (foot: Foot, by: number, reserve: number) => boolean
  /** Copies the limit, and nothing else, to a foot that has none. */
  readonly keep: (from: Foot, to: Foot) => void
}

/** What a band is counted as. */
export type BandFamily = 'pack min' | 'pack max' | 'standing pack' | 'lift' | 'keyed foot'

interface Band {
  readonly way: 'y' | 'z'
  readonly low: number
  readonly high: number
  readonly family: BandFamily
  /** Whether it is passed as found: the foot may stay there, and go no further. */
  readonly stands?: true
}

/** Far more than any move, in any unit of a document. */
const plenty = 1e7

export const footLimits = {
  'minimum pack': {
    term: 'pack min',
    band: ({ pack }) =>
      pack && {
        way: 'z',
        low: Math.min(pack.min ?? 0, pack.now) - pack.now,
        high: Infinity,
        family: pack.now < (pack.min ?? 0) ? 'standing pack' : 'pack min',
        ...(pack.now < (pack.min ?? 0) && { stands: true }),
      },
    tighten: ({ pack }) => {
      const { now = 0, min = 0 } = pack ?? {}
      if (!pack || now < min || now > (pack.max ?? Infinity)) return undefined
      return (part) => (pack.min = now - (now - min) * part)
    },
    loosen: ({ pack }, by) => {
      const min = pack?.min ?? 0
      if (!pack || min - by < 0 || min > pack.now) return false
      pack.min = min - by
      return true
    },
    keep: ({ pack }, to) => {
      if (pack) to.pack = { ...pack, max: undefined }
    },
  },
  'maximum pack': {
    term: 'pack max',
    band: ({ pack }) =>
      pack?.max === undefined
        ? undefined
        : {
            way: 'z',
            low: -Infinity,
            high: Math.max(pack.max, pack.now) - pack.now,
            family: pack.now > pack.max ? 'standing pack' : 'pack max',
            ...(pack.now > pack.max && { stands: true }),
          },
    tighten: ({ pack }) => {
      const { now = 0, min = 0, max } = pack ?? {}
      if (!pack || max === undefined || now < min || now > max) return undefined
      return (part) => (pack.max = now + (max - now) * part)
    },
    loosen: ({ pack }, by) => {
      if (pack?.max === undefined || pack.max < pack.now) return false
      pack.max += by
      return true
    },
    keep: ({ pack }, to) => {
      if (!pack) return
      // without its minimum, a pack that cannot run out
      to.pack = to.pack
        ? { ...to.pack, max: pack.max }
        : { now: pack.now + plenty, max: (pack.max ?? 0) + plenty }
    },
  },
  lift: {
    term: 'lift',
    band: ({ lift }) =>
      lift === undefined
        ? undefined
        : { way: 'z', low: -Infinity, high: Math.max(0, lift), family: 'lift' },
    tighten: (foot) => {
      const { lift } = foot
      return lift === undefined ? undefined : (part) => (foot.lift = lift * part)
    },
    loosen: (foot, by) => {
      if (foot.lift === undefined || foot.lift < 0) return false
      foot.lift += by
      return true
    },
    keep: (from, to) => (to.lift = from.lift),
  },
  'shim key': {
    term: 'foot cannot be shimmed',
    band: ({ free }) =>
      free?.shim === false ? { way: 'z', low: 0, high: 0, family: 'keyed foot' } : undefined,
    tighten: () => undefined,
    loosen: () => false,
    keep: (_, to) => (to.free = { ...to.free, shim: false }),
  },
  'side key': {
    term: 'foot cannot slide',
    band: ({ free }) =>
      free?.side === false ? { way: 'y', low: 0, high: 0, family: 'keyed foot' } : undefined,
    tighten: () => undefined,
    loosen: () => false,
    keep: (_, to) => (to.free = { ...to.free, side: false }),
  },
  hole: {
    term: 'hole',
    tighten: ({ hole }) => {
      if (!hole) return undefined
      const { clearance } = hole
      return (part) => (hole.clearance = clearance * part)
    },
    // the limit of a hole is its radius
    loosen: ({ hole }, by, reserve) => {
      if (!hole || Math.hypot(hole.x ?? 0, hole.y ?? 0) > hole.clearance / 2 - reserve) return false
      hole.clearance += 2 * by
      return true
    },
    keep: (from, to) => (to.hole = from.hole),
  },
} as const satisfies Record<string, FootLimit>

export type FootLimitName = keyof typeof footLimits
/** The terms of the contract that these are. */
export type FootTerm = (typeof footLimits)[FootLimitName]['term']

export const footLimitList = (Object.keys(footLimits) as FootLimitName[]).map((name) => ({
  name,
  ...(footLimits[name] as FootLimit & { readonly term: FootTerm }),
}))

export const isFootLimit = (name: string): name is FootLimitName => Object.hasOwn(footLimits, name)
