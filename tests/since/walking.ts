import type { TrainDocument } from '../../src/document/schema'
import { Random } from '../second/random'

// Trains read twice, with a machine that walked in between or none. What a walk does to the couplings is worked out here
// by plain geometry of straight lines, and shares nothing with the engine.

/** Five machines in a line, their feet and the planes of their couplings (mm). */
const machines = [0, 1, 2, 3, 4].map((m) => ({
  id: `m${m}`,
  name: `Machine ${m}`,
  from: 3000 * m,
  to: 3000 * m + 2400,
}))
const planesOf = (c: number) => [3000 * c + 2400, 3000 * (c + 1)] as const

/** Standard uncertainties of every line that is read: um at mid-span, mrad. */
const u = { offset: 8, slope: 0.03 }

/** A walk: how far the machine's axis stands higher and aside at both ends (um). */
export interface Walk {
  readonly machine: number
  readonly left: { readonly y: number; readonly z: number }
  readonly right: { readonly y: number; readonly z: number }
}

/** Where a machine's axis passes x after a walk (um), as a straight line through its two ends. */
function axisAt(walk: Walk | undefined, machine: number, way: 'y' | 'z', x: number): number {
  const { from, to } = machines[machine] ?? { from: 0, to: 1 }
  if (walk?.machine !== machine) return 0
  return walk.left[way] + ((walk.right[way] - walk.left[way]) * (x - from)) / (to - from)
}

const slopeOf = (walk: Walk | undefined, machine: number, way: 'y' | 'z'): number =>
  (axisAt(walk, machine, way, 1000) - axisAt(walk, machine, way, 0)) / 1000

/** A file of the train, read with random errors, after a walk or none. */
export function readAfter(random: Random, walk?: Walk, lines = startLines): TrainDocument {
  const couplings = machines.slice(1).map((right, c) => {
    const [p, q] = planesOf(c)
    const mid = (p + q) / 2
    const start = lines[c] ?? { y: 0, z: 0, sy: 0, sz: 0 }
    const offset = (way: 'y' | 'z') =>
      start[way] +
      axisAt(walk, c + 1, way, mid) -
      axisAt(walk, c, way, mid) +
      random.about(u.offset)
    const slope = (way: 'y' | 'z', was: number) =>
      was + slopeOf(walk, c + 1, way) - slopeOf(walk, c, way) + random.about(u.slope)
    return {
      id: `c${c}`,
      name: `coupling ${c}`,
      left: { machine: `m${c}`, plane: p },
      right: { machine: right.id, plane: q },
      tolerance: { flex: 0.5 },
      found: [
        {
          kind: 'line',
          at: mid,
          offset: { y: offset('y'), z: offset('z') },
          slope: { y: slope('y', start.sy), z: slope('z', start.sz) },
          u: u.offset,
          uSlope: u.slope,
        },
      ],
    }
  })
  return {
    format: 'holdfast-train',
    version: 1,
    name: 'Five machines that may walk',
    units: { length: 'mm', fine: 'um' },
    clock: { seenFrom: 'left' },
    machines: machines.map(({ id, name, from, to }, m) => ({
      ...{ id, name, role: 'pump', axis: { z: 400 } },
      ...(m === 2 && { held: true }),
      feet: [from + 300, to - 300].flatMap((x) => [
        { id: `${x} a`, x, y: 400 },
        { id: `${x} b`, x, y: -400 },
      ]),
    })),
    couplings,
  } as unknown as TrainDocument
}

/** How the couplings lay at first: nothing special, and not the same at all. */
export const startLines = [
  { y: 40, z: -120, sy: 0.05, sz: -0.02 },
  { y: -60, z: 30, sy: 0, sz: 0.1 },
  { y: 10, z: 80, sy: -0.04, sz: 0.03 },
  { y: 0, z: -20, sy: 0.02, sz: 0 },
]
