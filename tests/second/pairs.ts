import type { Coupling, Line, Machine, Skid, Train } from './train'

/** Feet in two pairs at x = 1000 and 2000 mm, 300 mm each side of the middle. */
export function fourFeet(): Machine['feet'] {
  return [1000, 2000].flatMap((x) =>
    [300, -300].map((y) => ({ id: `${x}${y > 0 ? 'a' : 'b'}`, x, y })),
  )
}

/** The misalignment as given at x = 100 mm, which is mid-span in these trains (um, mrad). */
export function given(y: number, z: number, slopeY = 0, slopeZ = 0): Line {
  return { kind: 'line', at: 100, offset: { y, z }, slope: { y: slopeY, z: slopeZ } }
}

/**
 * Two machines in mm and um for sums done by hand: the left one held, the right one on four feet,
 * flex planes at x = 0 and 200 mm. What a pair of feet is raised at 1000 counts 1.9 times at
 * mid-span, at 2000 it counts -0.9 times.
 */
export function twoMachines(
  tolerance: Coupling['tolerance'],
  found: Coupling['found'],
  right: Partial<Machine> = {},
  rest: Partial<Train> & { skids?: Skid[] } = {},
  coupling: Partial<Coupling> = {},
): Train {
  return {
    format: 'holdfast-train',
    version: 1,
    name: 'two machines',
    units: { length: 'mm', fine: 'um' },
    clock: { seenFrom: 'left' },
    machines: [
      { id: 'A', name: 'Motor', axis: { z: 400 }, anchored: 'dowelled', feet: [] },
      { id: 'B', name: 'Pump', axis: { z: 400 }, feet: fourFeet(), ...right },
    ],
    couplings: [
      {
        id: 'c',
        left: { machine: 'A', plane: 0 },
        right: { machine: 'B', plane: 200 },
        tolerance,
        found,
        ...coupling,
      },
    ],
    ...rest,
  }
}
