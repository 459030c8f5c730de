import { tol } from '../../mechanics/tolerances'
import type { Micrometres } from '../../mechanics/units'

/**
 * Thicknesses are counted in whole nanometres: every thickness people type, in um, mm or mil, is a
 * whole number of them, and sums of whole numbers are exact.
 */
export type Nanometres = number

/** Whole nanometres of a height (um), so that sums of plates are exact. */
export const nanometres = (value: Micrometres): Nanometres => Math.round(value * 1000)
/** The height (um) of whole nanometres. */
export const micrometres = (value: Nanometres): Micrometres => value / 1000

/**
 * Every pack that a store makes: sums of plates of its stock, as many of each as wanted, with the
 * fewest pieces for each sum. Exact dynamic programming over the number of pieces.
 */
export class Plates {
  /** Sums (nm) that can be made, ascending, without the empty pack. */
  readonly sums: readonly Nanometres[]
  /** False where there were more sums than are kept: packs of the most pieces may be missing. */
  readonly complete: boolean
  /** Last plate and number of pieces of the pack with the fewest pieces, by sum. */
  private readonly packs: ReadonlyMap<Nanometres, { last: Nanometres; pieces: number }>

  /**
   * @param stock thicknesses in the store
   * @param most most plates in one pack
   * @param limit no pack thicker than this is wanted
   */
  constructor(stock: readonly Micrometres[], most: number, limit: Micrometres = Infinity) {
    const plates = [...new Set(stock.map(nanometres))].filter((t) => t > 0).sort((a, b) => b - a)
    const packs = new Map<Nanometres, { last: Nanometres; pieces: number }>()
    const highest = limit * 1000
    let reached: Nanometres[] = [0]
    let complete = true
    for (let pieces = 1; pieces <= most && reached.length > 0 && complete; pieces++) {
      const next: Nanometres[] = []
      // thickest last plate first: of equally short packs the one with the thickest plates
      for (const last of plates)
        for (const under of reached) {
          const sum = under + last
          if (sum > highest || packs.has(sum)) continue
          packs.set(sum, { last, pieces })
          next.push(sum)
        }
      reached = next
      complete = packs.size <= tol.mostSums
    }
    this.packs = packs
    this.complete = complete
    this.sums = [...packs.keys()].sort((a, b) => a - b)
  }

  /** The pack with the fewest plates of exactly this thickness, thickest first; undefined where there is none. */
  fewest(thickness: Micrometres): Micrometres[] | undefined {
    const plates: Nanometres[] = []
    for (let rest = nanometres(thickness); rest > 0;) {
      const pack = this.packs.get(rest)
      if (!pack) return undefined
      plates.push(pack.last)
      rest -= pack.last
    }
    return plates.sort((a, b) => b - a).map(micrometres)
  }

  makes(thickness: Nanometres): boolean {
    return thickness === 0 || this.packs.has(thickness)
  }
}
