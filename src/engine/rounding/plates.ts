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
  /** Number of pieces of the pack with the fewest, by sum. */
  private readonly packs: ReadonlyMap<Nanometres, number>
  /** Thickest first. */
  private readonly stock: readonly Nanometres[]

  /**
   * @param stock thicknesses in the store
   * @param most most plates in one pack
   * @param limit no pack thicker than this is wanted
   */
  constructor(stock: readonly Micrometres[], most: number, limit: Micrometres = Infinity) {
    const plates = [...new Set(stock.map(nanometres))].filter((t) => t > 0).sort((a, b) => b - a)
    const packs = new Map<Nanometres, number>()
    const highest = limit * 1000
    let reached: Nanometres[] = [0]
    let complete = true
    for (let pieces = 1; pieces <= most && reached.length > 0 && complete; pieces++) {
      const next: Nanometres[] = []
      for (const last of plates)
        for (const under of reached) {
          const sum = under + last
          if (sum > highest || packs.has(sum)) continue
          packs.set(sum, pieces)
          next.push(sum)
        }
      reached = next
      complete = packs.size <= tol.mostSums
    }
    this.packs = packs
    this.stock = plates
    this.complete = complete
    this.sums = [...packs.keys()].sort((a, b) => a - b)
  }

  /**
   * The pack with the fewest plates of exactly this thickness, thickest first; undefined where there is none.
   * Of equally short ones that of the fewest thicknesses, so that equal plates cannot be taken for each
   * other; then the one with the thickest plates.
   */
  fewest(thickness: Micrometres): Micrometres[] | undefined {
    const whole = nanometres(thickness)
    if (whole === 0) return []
    const known = this.packs.get(whole)
    if (known === undefined) return undefined
    let best: readonly Nanometres[] | undefined
    let looked = 0
    const look = (pack: readonly Nanometres[], rest: Nanometres, pieces: number): void => {
      if (looked++ > tol.mostPacks && best) return
      if (pieces === 0) {
        if (!best || kindsOf(pack) < kindsOf(best)) best = pack
        return
      }
      for (const plate of this.stock) {
        if (plate > (pack.at(-1) ?? Infinity) || plate * pieces < rest) continue
        const left = rest - plate
        if ((left === 0 ? 0 : this.packs.get(left)) === pieces - 1)
          look([...pack, plate], left, pieces - 1)
      }
    }
    look([], whole, known)
    return best?.map(micrometres)
  }

  /** How many plates the shortest pack of a thickness has; 0 for none, undefined where it cannot be made. */
  pieces(thickness: Nanometres): number | undefined {
    return thickness === 0 ? 0 : this.packs.get(thickness)
  }
}

const kindsOf = (pack: readonly Nanometres[]): number => new Set(pack).size
