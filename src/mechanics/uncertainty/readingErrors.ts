import type { Coupling, ReadingSet } from '../train'
import type { AsFound } from '../readings/asFound'
import { outward } from '../readings/clock'
import { equationsOf, readingWithoutZero, type SweepSet } from '../readings/equation'
import { lineGains } from '../readings/lineGains'
import { choleskyOf } from '../cholesky'
import { lineChange, type ErrorSource } from './errorSource'
import { usualU } from './usual'

/**
 * Errors of the line of a coupling as its readings give it, by linear propagation (JCGM 100, 5.1.2): the gains of the
 * weighted least squares times the error of each value read.
 *
 * Readings, offsets and slopes have errors each of their own; so have the places of dials and the diameters, which act
 * through the line found: a place error of d mm adds d times the slope found to what a rim set reads, a diameter error
 * of e mm adds e/2 to the radius of a face, gap or spool set. All these together have one covariance of the four
 * numbers of the line, of which the columns of Cholesky's triangle are independent errors. Sag is one error a bracket,
 * times the uncertainty that each set gives it.
 * @param c index of the coupling
 * @returns um and mrad, one standard deviation each
 */
export function readingErrors(
  coupling: Coupling,
  c: number,
  { line, covariance }: Pick<AsFound, 'line' | 'covariance'>,
): ErrorSource[] {
  const gains = lineGains(coupling)
  const columns = columnsBySet(coupling)
  /** Change of the four numbers by an error of every value of a set. */
  const change = (set: number, by: (hour: number) => number): number[] =>
    gains.map((row) =>
      (columns.get(set) ?? []).reduce(
        (sum, { column, hour }) => sum + (row[column] ?? 0) * by(hour),
        0,
      ),
    )
  const sum = covariance.map((row) => [...row])
  const brackets = new Map<string, number[]>()
  coupling.found.forEach((set, i) => {
    if (!set.used || set.kind === 'line') return
    const place = change(i, (hour) => placeError(set, coupling, line, hour))
    for (const [j, row] of sum.entries())
      for (const k of row.keys()) row[k] = (row[k] ?? 0) + (place[j] ?? 0) * (place[k] ?? 0)
    if (set.kind === 'gap') return
    const sag = uOfSag(set)
    const by = change(i, (hour) => sag * outward(hour).z)
    const key = set.bracket === undefined ? `set ${i}` : `bracket ${set.bracket}`
    const known = brackets.get(key)
    brackets.set(
      key,
      by.map((value, j) => value + (known?.[j] ?? 0)),
    )
  })
  const lower = choleskyOf(sum)
  return [
    ...lower.map((_, k) => ({
      key: `readings of ${coupling.id}, ${k}`,
      group: { kind: 'readings' as const, coupling: c },
      effects: [{ coupling: c, by: lineChange(lower.map((row) => row[k] ?? 0)) }],
    })),
    ...[...brackets].map(([key, by]) => ({
      key: `sag at ${coupling.id}, ${key}`,
      group: { kind: 'brackets' as const, coupling: c },
      effects: [{ coupling: c, by: lineChange(by) }],
    })),
  ]
}

/** Standard uncertainty of the sag (um). */
export const uOfSag = (set: Exclude<SweepSet, { kind: 'gap' }>): number =>
  set.uSag ?? usualU.sag[set.kind][set.sagGiven ? 'entered' : 'missing']

/** What a reading changes by when its dial stands, or its circle measures, one standard deviation more than entered. */
function placeError(
  set: SweepSet,
  coupling: Coupling,
  line: AsFound['line'],
  hour: number,
): number {
  const at = (moved: SweepSet) => readingWithoutZero(moved, coupling, line, hour)
  if (set.kind === 'rim') return (set.uAt ?? usualU.at) * (at({ ...set, at: set.at + 1 }) - at(set))
  return (set.uDiameter ?? usualU.diameter) * (at({ ...set, diameter: set.diameter + 1 }) - at(set))
}

/** Which columns of the gains belong to the readings of a set; sets of lines have none with an hour. */
function columnsBySet(coupling: Coupling): Map<number, { column: number; hour: number }[]> {
  const out = new Map<number, { column: number; hour: number }[]>()
  let first = 0
  coupling.found.forEach((set: ReadingSet, i) => {
    if (!set.used) return
    if (set.kind === 'line') {
      first += equationsOf(set, coupling).length
      return
    }
    const start = first
    out.set(
      i,
      set.readings.map(({ hour }, k) => ({ column: start + k, hour })),
    )
    first += set.readings.length
  })
  return out
}
