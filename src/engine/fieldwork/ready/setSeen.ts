import { tol } from '../../../mechanics/tolerances'
import type { Micrometres, Milliradians, Millimetres } from '../../../mechanics/units'
import type { Coupling, ReadingSet } from '../../../mechanics/train'
import { outward } from '../../../mechanics/readings/clock'
import { sagOf, type SweepSet } from '../../../mechanics/readings/equation'

/**
 * What one set by itself says: where the right axis lies against the left one at an x, or how it slopes
 * against it. A direction that the set leaves open is missing.
 */
export type SetSeen =
  | {
      readonly kind: 'place'
      readonly x: Millimetres
      readonly y?: Micrometres
      readonly z?: Micrometres
    }
  | {
      readonly kind: 'slope'
      readonly sy?: Milliradians
      readonly sz?: Milliradians
      readonly diameter: Millimetres
    }

/** A set on its own; gaps and faces see the slope, rims and spacers a place, lines what they give. */
export function setSeen(set: ReadingSet, coupling: Coupling): SetSeen[] {
  const { p, q } = coupling
  if (set.kind === 'line') {
    const { y: sy, z: sz } = set.slope
    const slope = { ...(sy !== undefined && { sy }), ...(sz !== undefined && { sz }) }
    return [
      { kind: 'place', x: set.at, ...set.offset },
      ...(sy === undefined && sz === undefined
        ? []
        : [{ kind: 'slope' as const, ...slope, diameter: 0 }]),
    ]
  }
  const seen = amplitude(set)
  const times = (factor: number) => ({
    ...(seen.y !== undefined && { y: seen.y * factor }),
    ...(seen.z !== undefined && { z: seen.z * factor }),
  })
  switch (set.kind) {
    case 'rim':
      return [{ kind: 'place', x: set.at, ...times(set.rides === 'right' ? 1 : -1) }]
    case 'spool': {
      // reading = (diameter/2) a.u with a = d(q)/span at the left end, -d(p)/span at the right one
      const by = (2 * (q - p)) / set.diameter
      return [
        set.end === 'left'
          ? { kind: 'place', x: q, ...times(by) }
          : { kind: 'place', x: p, ...times(-by) },
      ]
    }
    case 'face':
    case 'gap': {
      const sign = set.kind === 'gap' || set.face === 'back' ? -1 : 1
      const { y: sy, z: sz } = times((2 * sign) / set.diameter)
      return [
        {
          kind: 'slope',
          ...(sy !== undefined && { sy }),
          ...(sz !== undefined && { sz }),
          diameter: set.diameter,
        },
      ]
    }
  }
}

/** Least squares of reading - sag cos = c + y sin + z cos over a set; nothing where directions mix. */
function amplitude(set: SweepSet): { readonly y?: number; readonly z?: number } {
  const rows = set.readings.map(({ hour, value }) => {
    const u = outward(hour)
    return { ...u, value: value - sagOf(set) * u.z }
  })
  const mean = (of: (row: (typeof rows)[number]) => number) =>
    rows.reduce((sum, row) => sum + of(row), 0) / rows.length
  const [my, mz, mv] = [mean(({ y }) => y), mean(({ z }) => z), mean(({ value }) => value)]
  const sum = (of: (y: number, z: number, value: number) => number) =>
    rows.reduce((total, row) => total + of(row.y - my, row.z - mz, row.value - mv), 0)
  const [yy, zz, yz] = [sum((y) => y * y), sum((_, z) => z * z), sum((y, z) => y * z)]
  const [yv, zv] = [sum((y, _, v) => y * v), sum((_, z, v) => z * v)]
  if (yy <= tol.parallel && zz <= tol.parallel) return {}
  if (yy <= tol.parallel) return { z: zv / zz }
  if (zz <= tol.parallel) return { y: yv / yy }
  const open = yy * zz - yz * yz
  if (open <= tol.parallel * yy * zz) return {}
  return { y: (yv * zz - zv * yz) / open, z: (zv * yy - yv * yz) / open }
}
