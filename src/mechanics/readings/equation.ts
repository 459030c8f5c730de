import type { Micrometres, Millimetres, Milliradians } from '../units'
import type { Coupling, ReadingSet } from '../train'
import { outward } from './clock'

/** Misalignment of a coupling: offset at mid-span (um) and slope (mrad), right axis against left. */
export interface Misalignment {
  readonly y: Micrometres
  readonly z: Micrometres
  readonly sy: Milliradians
  readonly sz: Milliradians
}

/**
 * What a sweep sees of the misalignment: `(offset * d + slope * s) . u(hour)`, beside its zero and
 * its sag. `offset` has no unit, `slope` is in mm.
 */
interface Sight {
  readonly offset: number
  readonly slope: Millimetres
}

export type SweepSet = Exclude<ReadingSet, { kind: 'line' }>

/** How the dials of a set respond, after the contract's table of reading kinds. */
function sightOf(set: SweepSet, coupling: Coupling): Sight {
  const span = coupling.q - coupling.p
  switch (set.kind) {
    case 'rim': {
      const sign = set.rides === 'right' ? 1 : -1
      return { offset: sign, slope: sign * (set.at - coupling.mid) }
    }
    case 'face':
      return { offset: 0, slope: ((set.face === 'front' ? 1 : -1) * set.diameter) / 2 }
    case 'gap':
      return { offset: 0, slope: -set.diameter / 2 }
    case 'spool': {
      const sign = set.end === 'left' ? 1 : -1
      return { offset: (sign * set.diameter) / (2 * span), slope: set.diameter / 4 }
    }
  }
}

/** Bracket sag of a sweep; gauges between faces have no bracket. */
export const sagOf = (set: SweepSet): Micrometres => (set.kind === 'gap' ? 0 : set.sag)

/** What a sweep would read at an hour, short of its zero. */
export function readingWithoutZero(
  set: SweepSet,
  coupling: Coupling,
  d: Misalignment,
  hour: number,
): Micrometres {
  const sight = sightOf(set, coupling)
  const u = outward(hour)
  const y = sight.offset * d.y + sight.slope * d.sy
  const z = sight.offset * d.z + sight.slope * d.sz
  return y * u.y + z * u.z + sagOf(set) * u.z
}

/** One weighted equation in the four unknowns `[y, sy, z, sz]`; sweeps are centred on their own mean. */
export interface Equation {
  readonly coefficients: readonly [number, number, number, number]
  /** The coefficients before the zero was taken out: the scale against which they count as nothing. */
  readonly raw: readonly [number, number, number, number]
  readonly value: number
  readonly weight: number
}

/** The equations of a set; the unknown zero of a sweep is eliminated by taking off the sweep's mean. */
export function equationsOf(set: ReadingSet, coupling: Coupling): Equation[] {
  if (set.kind === 'line') return lineEquations(set, coupling)
  const sight = sightOf(set, coupling)
  const raw = set.readings.map(({ hour }) => {
    const u = outward(hour)
    return [sight.offset * u.y, sight.slope * u.y, sight.offset * u.z, sight.slope * u.z] as const
  })
  const values = set.readings.map(({ hour, value }) => value - sagOf(set) * outward(hour).z)
  const mean = (list: readonly number[]) => list.reduce((a, b) => a + b, 0) / list.length
  const [m0, m1, m2, m3] = [0, 1, 2, 3].map((k) => mean(raw.map((row) => row[k] ?? 0)))
  const meanValue = mean(values)
  return raw.map((row, i) => ({
    coefficients: [row[0] - (m0 ?? 0), row[1] - (m1 ?? 0), row[2] - (m2 ?? 0), row[3] - (m3 ?? 0)],
    raw: row,
    value: (values[i] ?? 0) - meanValue,
    weight: 1 / set.u,
  }))
}

function lineEquations(set: Extract<ReadingSet, { kind: 'line' }>, coupling: Coupling): Equation[] {
  const arm = set.at - coupling.mid
  const equation = (
    coefficients: readonly [number, number, number, number],
    value: number | undefined,
    u: number,
  ): Equation[] =>
    value === undefined ? [] : [{ coefficients, raw: coefficients, value, weight: 1 / u }]
  return [
    ...equation([1, arm, 0, 0], set.offset.y, set.u),
    ...equation([0, 0, 1, arm], set.offset.z, set.u),
    ...equation([0, 1, 0, 0], set.slope.y, set.uSlope),
    ...equation([0, 0, 0, 1], set.slope.z, set.uSlope),
  ]
}
