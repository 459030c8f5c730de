import { Random } from './random'

/** Everything that is drawn for a random train, each from streams of its own. */
export const streamNames = [
  // what stands where
  ...(['units', 'clock', 'layout', 'machine', 'skids', 'skid'] as const),
  ...(['free', 'key', 'anchored', 'held', 'weight'] as const),
  // states, and how the machines grow in them
  ...(['states', 'factor', 'growth', 'unused growth', 'between'] as const),
  // the motions that would put the train right, and how limits lie around them
  ...(['motion', 'circles', 'tight'] as const),
  ...(['pack', 'lift', 'hole', 'tilt', 'restraint'] as const),
  ...(['share', 'weights', 'reserve'] as const),
  // couplings and what was read of them
  ...(['aim', 'tolerance', 'shape', 'setting', 'residue', 'gap'] as const),
  ...(['dial step', 'readings', 'sag', 'reading u'] as const),
  // how well all of that is known
  ...(['known sets', 'added sets', 'known growth', 'silent growth'] as const),
  ...(['known holes', 'sure key', 'known gap', 'sure', 'room'] as const),
  // what some trains have besides
  ...(['surveys', 'survey', 'survey u', 'shims', 'packs on the step', 'leave'] as const),
  ...(['intervals', 'clutch', 'rotors'] as const),
] as const

export type StreamName = (typeof streamNames)[number]

/** A whole number of 32 bits from a text: FNV-1a (public domain, from memory). */
function hash(text: string): number {
  let sum = 0x811c9dc5
  for (let i = 0; i < text.length; i++) sum = Math.imul(sum ^ text.charCodeAt(i), 0x01000193)
  return sum >>> 0
}

/**
 * The streams of one random train: one for each limit at each place, seeded by the train, the limit's
 * name and the place. What is drawn from one changes nothing that another gives.
 */
export class Streams {
  private readonly known = new Map<string, Random>()

  constructor(
    readonly seed: number,
    /** Streams that begin as those of another train. */
    private readonly others: Partial<Record<StreamName, number>> = {},
  ) {}

  /** The stream of a limit at a place; asked for again it goes on from where it was. */
  of(name: StreamName, ...place: (string | number)[]): Random {
    const key = [this.others[name] ?? this.seed, name, ...place].join('/')
    const known = this.known.get(key)
    if (known) return known
    const made = new Random(hash(key))
    this.known.set(key, made)
    return made
  }
}
