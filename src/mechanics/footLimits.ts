import { packRange } from './packRange'
import type { Foot } from './train'
import type { Micrometres } from './units'

/**
 * What limits a foot: each a thing of its own, in one direction. A key holds its foot in both; a hole, a
 * true circle, whichever way it presses. Their words stand in `language/footLimitWords.ts`.
 */
export type FootLimit = 'minimum pack' | 'maximum pack' | 'lift' | 'hole' | 'shim key' | 'side key'

/** What about a foot bounds its moves: one row or circle each, with the limit that either side of it is. */
export const limitSides = {
  pack: { lower: 'minimum pack', upper: 'maximum pack' },
  lift: { lower: 'lift', upper: 'lift' },
  'shim key': { lower: 'shim key', upper: 'shim key' },
  'side key': { lower: 'side key', upper: 'side key' },
  hole: { lower: 'hole', upper: 'hole' },
} as const satisfies Record<string, Record<'lower' | 'upper', FootLimit>>

export type FootFact = keyof typeof limitSides

/** All but the circle bound one move of the foot between two values. */
export type BandFact = Exclude<FootFact, 'hole'>
export type FootMoveName = 'shim' | 'side'

export interface FootBand {
  readonly fact: BandFact
  readonly move: FootMoveName
  readonly low: Micrometres
  readonly high: Micrometres
}

const bandOf: Record<BandFact, (foot: Foot) => Omit<FootBand, 'fact'> | undefined> = {
  pack: ({ pack }) => {
    if (!pack) return undefined
    const [low, high] = packRange(pack)
    return { move: 'shim', low, high }
  },
  lift: ({ lift }) =>
    lift === undefined ? undefined : { move: 'shim', low: -Infinity, high: Math.max(0, lift) },
  'shim key': ({ mayShim }) => (mayShim ? undefined : { move: 'shim', low: 0, high: 0 }),
  'side key': ({ maySlide }) => (maySlide ? undefined : { move: 'side', low: 0, high: 0 }),
}
const bandFacts = Object.keys(bandOf) as BandFact[]

/**
 * The bands that a foot's own moves keep to, shim + up and side + toward 3 o'clock. A limit that is
 * passed as found becomes "no further".
 */
export function footBands(foot: Foot): FootBand[] {
  const bands: FootBand[] = []
  for (const fact of bandFacts) {
    const band = bandOf[fact](foot)
    if (band) bands.push({ fact, move: band.move, low: band.low, high: band.high })
  }
  return bands
}
