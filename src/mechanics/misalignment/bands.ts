import { coverage95 } from '../coverage'
import type { AsFound } from '../readings/asFound'
import type { Misalignment } from '../readings/equation'
import { readingGains, type Gains } from '../readings/gains'
import type { Coupling } from '../train'
import type { CouplingMotion } from './shares'

/** From where to where a value is good, in its own unit (um, mrad). */
export type Band = readonly [low: number, high: number]

/** How unsure it is what a set will show; standard uncertainties (um, mrad). */
export type SetDoubt =
  | { readonly kind: 'sweep'; readonly readings: readonly number[] }
  | { readonly kind: 'line'; readonly offset: Ways; readonly slope: Ways }

interface Ways {
  readonly y: number
  readonly z: number
}

/**
 * How far what is read may lie from what is expected, by linear propagation (textbook; JCGM 100, 5.1.2). With g what a
 * reading gains from the misalignment d, it differs from its expected value by
 *
 *   g . (error of the line found) + g . (errors of the work) + its own error,
 *
 * which are independent of each other: variance = g C g' + sum over errors e of the work (g . e)^2 + u^2, with C the
 * covariance of the line as found. Of a dial that is set to 0 at its first hour everything is told against that hour:
 * g is then the difference of the two, and u^2 counts twice. A dial that keeps the zero it was found with, or a gauge,
 * has that zero's own error as well: u^2 / n of the mean of n readings, which does not correlate with the line since
 * the line is found from readings less their mean; g of the line is then what is over its own mean.
 * @param errors what one standard deviation of each independent error of the work does to this coupling
 */
export function setDoubts(
  coupling: Coupling,
  { covariance, again = covariance }: Pick<AsFound, 'covariance' | 'again'>,
  errors: readonly CouplingMotion[],
): SetDoubt[] {
  const line = (gains: Gains) =>
    gains.reduce(
      (sum, gi, i) => sum + gains.reduce((all, gj, j) => all + gi * gj * (again[i]?.[j] ?? 0), 0),
      0,
    )
  const work = (gains: Gains, gap = 0) =>
    errors.reduce(
      (sum, { misalignment, gap: by }) => sum + (gained(gains, misalignment) + gap * by) ** 2,
      0,
    )
  return coupling.found.map((set): SetDoubt => {
    if (set.kind === 'line') {
      const arm = set.at - coupling.mid
      const u = (gains: Gains, own: number) => Math.sqrt(line(gains) + work(gains) + own * own)
      return {
        kind: 'line',
        offset: { y: u([1, arm, 0, 0], set.u), z: u([0, 0, 1, arm], set.u) },
        slope: { y: u([0, 1, 0, 0], set.uSlope), z: u([0, 0, 0, 1], set.uSlope) },
      }
    }
    const all = set.readings.map(({ hour }) => readingGains(set, coupling, hour))
    const first = set.readings.findIndex(({ value }) => value === 0)
    const zero = all[first]
    const mean = meanOf(all)
    const own = set.u * set.u
    return {
      kind: 'sweep',
      readings: all.map((gains, k) => {
        if (k === first) return 0
        const variance = zero
          ? line(less(gains, zero)) + work(less(gains, zero)) + 2 * own
          : line(less(gains, mean)) +
            work(gains, set.kind === 'gap' ? 1 : 0) +
            own * (1 + 1 / all.length)
        return Math.sqrt(variance)
      }),
    }
  })
}

const gained = ([y, sy, z, sz]: Gains, d: Misalignment): number =>
  y * d.y + sy * d.sy + z * d.z + sz * d.sz

const less = (a: Gains, b: Gains): Gains => [a[0] - b[0], a[1] - b[1], a[2] - b[2], a[3] - b[3]]

function meanOf(all: readonly Gains[]): Gains {
  const mean = (k: 0 | 1 | 2 | 3) => all.reduce((sum, gains) => sum + gains[k], 0) / all.length
  return [mean(0), mean(1), mean(2), mean(3)]
}

/** The band around an expected value. */
export const bandAround = (value: number, u: number): Band => [
  value - coverage95 * u,
  value + coverage95 * u,
]
