import type { Coupling, Train } from './train'

/**
 * The reverse-dial case (common practice, no source): inches and mils, the left machine held, four
 * rim sweeps each zeroed at its first hour, sag 1 mil on each. By hand: 16 and 30 mil up, 28 and
 * 36 mil toward 9 o'clock.
 */
export function reverseDial(): Train {
  const tolerance = 0.0001
  const rim = (rides: 'left' | 'right', at: number, from: number, to: number, value: number) =>
    ({
      kind: 'rim',
      rides,
      at,
      sag: 1,
      readings: [
        [from, 0],
        [to, value],
      ],
    }) satisfies Coupling['found'][number]
  return {
    format: 'holdfast-train',
    version: 1,
    name: 'reverse dials',
    units: { length: 'in', fine: 'mil' },
    clock: { seenFrom: 'left' },
    machines: [
      {
        id: 'left',
        name: 'Motor',
        axis: { z: 10 },
        held: true,
        feet: [
          { id: '1', x: -20 },
          { id: '2', x: -5 },
        ],
      },
      {
        id: 'right',
        name: 'Pump',
        axis: { z: 10 },
        feet: [
          { id: '1', x: 12 },
          { id: '2', x: 24 },
        ],
      },
    ],
    couplings: [
      {
        id: 'c',
        left: { machine: 'left', plane: 0 },
        right: { machine: 'right', plane: 6 },
        tolerance: { offset: tolerance, angle: tolerance },
        found: [
          rim('left', 0, 12, 6, -6),
          rim('left', 0, 3, 9, 40),
          rim('right', 6, 6, 12, -16),
          rim('right', 6, 9, 3, 48),
        ],
      },
    ],
  }
}
