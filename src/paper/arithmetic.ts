import { tol } from '../mechanics/tolerances'
import { sagOf } from '../mechanics/readings/equation'
import { outward } from '../mechanics/readings/clock'
import type { Micrometres, Millimetres, Milliradians } from '../mechanics/units'
import type { Coupling, Reading, ReadingSet } from '../mechanics/train'

/** Up and down, or to the sides. */
export type Plane = 'up' | 'side'

/** What one set says of one plane: how far the right axis lies off the left one at x, or how it slopes. */
export type Fact = {
  readonly set: number
  readonly plane: Plane
  readonly how: Reduction
} & (
  | { readonly what: 'offset'; readonly x: Millimetres; readonly value: Micrometres }
  | { readonly what: 'slope'; readonly value: Milliradians }
)

/** How the readings of a sweep become the one number that its dial sees (um). */
type Reduction =
  | { readonly kind: 'given' }
  /** Half the difference of two opposite readings, less the sag. */
  | {
      readonly kind: 'opposite'
      readonly hours: readonly [number, number]
      readonly readings: readonly [Micrometres, Micrometres]
      readonly sag: Micrometres
      readonly sees: Micrometres
    }
  /** A reading against the mean of the two opposite ones: the hour facing it was not read. */
  | {
      readonly kind: 'one'
      readonly hour: number
      readonly reading: Micrometres
      readonly mean: Micrometres
      readonly sag: Micrometres
      readonly sees: Micrometres
    }
  | { readonly kind: 'least squares'; readonly sums: Sums; readonly sees: Micrometres }

/** Sums behind the least squares of one sweep: v = zero + up cos + side sin, v with the sag taken off. */
interface Sums {
  readonly rows: readonly {
    readonly hour: number
    readonly reading: Micrometres
    readonly v: Micrometres
    readonly cos: number
    readonly sin: number
  }[]
  readonly cos: number
  readonly sin: number
  readonly cosCos: number
  readonly cosSin: number
  readonly sinSin: number
  readonly v: number
  readonly vCos: number
  readonly vSin: number
  readonly zero: number
  readonly up: number
  readonly side: number
}

/** Everything that one set says; nothing for a plane of which it says nothing by itself. */
export function factsOf(coupling: Coupling, set: ReadingSet, index: number): Fact[] {
  if (set.kind === 'line') {
    const given = { set: index, how: { kind: 'given' } } as const
    const { offset, slope, at } = set
    return [
      ...(offset.z === undefined
        ? []
        : [{ ...given, plane: 'up', what: 'offset', x: at, value: offset.z } as const]),
      ...(offset.y === undefined
        ? []
        : [{ ...given, plane: 'side', what: 'offset', x: at, value: offset.y } as const]),
      ...(slope.z === undefined
        ? []
        : [{ ...given, plane: 'up', what: 'slope', value: slope.z } as const]),
      ...(slope.y === undefined
        ? []
        : [{ ...given, plane: 'side', what: 'slope', value: slope.y } as const]),
    ]
  }
  const span = coupling.q - coupling.p
  return (['up', 'side'] as const).flatMap((plane): Fact[] => {
    const how = reduce(set.readings, sagOf(set), plane)
    if (how?.kind === undefined || how.kind === 'given') return []
    const { sees } = how
    const part = { set: index, plane, how }
    switch (set.kind) {
      case 'rim': {
        // + pushes the stem in: on the right shaft's rim the axis above the bracket's, on the left one's below
        const value = set.rides === 'right' ? sees : -sees
        return [{ ...part, what: 'offset', x: set.at, value }]
      }
      case 'face': {
        const value = ((set.face === 'front' ? 1 : -1) * sees) / (set.diameter / 2)
        return [{ ...part, what: 'slope', value }]
      }
      case 'gap':
        return [{ ...part, what: 'slope', value: -sees / (set.diameter / 2) }]
      case 'spool': {
        const angle = sees / (set.diameter / 2)
        return set.end === 'left'
          ? [{ ...part, what: 'offset', x: coupling.q, value: angle * span }]
          : [{ ...part, what: 'offset', x: coupling.p, value: -angle * span }]
      }
    }
  })
}

const quarters = { up: [12, 6], side: [3, 9] } as const

function reduce(
  readings: readonly Reading[],
  sag: Micrometres,
  plane: Plane,
): Reduction | undefined {
  const at = (hour: number) => readings.find((reading) => reading.hour === hour)?.value
  const own = quarters[plane]
  const other = quarters[plane === 'up' ? 'side' : 'up']
  const hours = new Set(readings.map((reading) => reading.hour))
  const plain =
    hours.size === readings.length && readings.every((r) => [12, 3, 6, 9].includes(r.hour))
  const off = plane === 'up' ? sag : 0
  const [a, b] = [at(own[0]), at(own[1])]
  if (plain && a !== undefined && b !== undefined)
    return { kind: 'opposite', hours: own, readings: [a, b], sag: off, sees: (a - b) / 2 - off }
  const [c, d] = [at(other[0]), at(other[1])]
  const hour = a === undefined ? own[1] : own[0]
  const single = a ?? b
  if (plain && single !== undefined && c !== undefined && d !== undefined) {
    const mean = (c + d) / 2
    const sign = hour === own[0] ? 1 : -1
    return {
      kind: 'one',
      hour,
      reading: single,
      mean,
      sag: off,
      sees: sign * (single - mean) - off,
    }
  }
  if (plain) return undefined
  const sums = leastSquares(readings, sag)
  return sums && { kind: 'least squares', sums, sees: plane === 'up' ? sums.up : sums.side }
}

/** Fits zero, up and side to a sweep by the normal equations; undefined where they have no one answer. */
function leastSquares(readings: readonly Reading[], sag: Micrometres): Sums | undefined {
  const rows = readings.map(({ hour, value }) => {
    const { y: sin, z: cos } = outward(hour)
    return { hour, reading: value, v: value - sag * cos, cos, sin }
  })
  const sum = (of: (row: (typeof rows)[number]) => number) =>
    rows.reduce((all, row) => all + of(row), 0)
  const n = rows.length
  const [cos, sin, v] = [sum((r) => r.cos), sum((r) => r.sin), sum((r) => r.v)]
  const cosCos = sum((r) => r.cos * r.cos)
  const cosSin = sum((r) => r.cos * r.sin)
  const sinSin = sum((r) => r.sin * r.sin)
  const [vCos, vSin] = [sum((r) => r.v * r.cos), sum((r) => r.v * r.sin)]
  // the zero taken out of the three equations leaves two
  const [aa, ab, bb] = [
    cosCos - (cos * cos) / n,
    cosSin - (cos * sin) / n,
    sinSin - (sin * sin) / n,
  ]
  const [pa, pb] = [vCos - (v * cos) / n, vSin - (v * sin) / n]
  const det = aa * bb - ab * ab
  if (Math.abs(det) < tol.lastDigits) return undefined
  const up = (pa * bb - pb * ab) / det
  const side = (pb * aa - pa * ab) / det
  const zero = (v - up * cos - side * sin) / n
  return { rows, cos, sin, cosCos, cosSin, sinSin, v, vCos, vSin, zero, up, side }
}

/** A coupling's line drawn through what its sets say of one plane. */
export interface PencilLine {
  readonly plane: Plane
  readonly facts: readonly Fact[]
  readonly slope: Milliradians
  /** At mid-span. */
  readonly offset: Micrometres
}

/** Both planes where each is fixed by exactly two facts; undefined where a pencil does not do. */
export function pencilLines(coupling: Coupling): readonly [PencilLine, PencilLine] | undefined {
  const facts = coupling.found.flatMap((set, i) => (set.used ? factsOf(coupling, set, i) : []))
  const used = coupling.found.flatMap((set, i) => (set.used ? [i] : []))
  // a set that says nothing of its own may still say something together with others
  if (used.some((i) => !facts.some(({ set }) => set === i))) return undefined
  const up = lineThrough(coupling, 'up', facts)
  const side = lineThrough(coupling, 'side', facts)
  return up && side && [up, side]
}

function lineThrough(
  coupling: Coupling,
  plane: Plane,
  all: readonly Fact[],
): PencilLine | undefined {
  const facts = all.filter((fact) => fact.plane === plane)
  const [a, b] = facts
  if (!a || !b || facts.length !== 2) return undefined
  if (a.what === 'offset' && b.what === 'offset') {
    if (Math.abs(b.x - a.x) < tol.sameX) return undefined
    const slope = (b.value - a.value) / (b.x - a.x)
    return { plane, facts, slope, offset: a.value + slope * (coupling.mid - a.x) }
  }
  const [point, tilt] = a.what === 'offset' ? [a, b] : [b, a]
  if (point.what !== 'offset' || tilt.what !== 'slope') return undefined
  return {
    plane,
    facts,
    slope: tilt.value,
    offset: point.value + tilt.value * (coupling.mid - point.x),
  }
}
