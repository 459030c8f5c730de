/** A reading set, a growth point or an aim as the train file writes them. */
type Json = Record<string, unknown>

export interface Pair {
  /** x of the feet of the right machine, one foot a row. */
  readonly feet: readonly number[]
  /** x of the feet of the left machine, which is then held by choice; without them it is anchored. */
  readonly heldFeet?: readonly number[]
  /** x of the coupling's single plane, where the answer states the line as found. */
  readonly plane: number
  readonly found: readonly Json[]
  readonly units?: { length: string; fine: string; temperature?: string }
  readonly seenFrom?: 'left' | 'right'
  readonly growth?: Record<string, readonly Json[]>
  readonly aim?: Json
  readonly states?: readonly Json[]
  /** Of the offset (fine units) and of the angle (mrad). */
  readonly tolerance?: number
}

const feetAt = (xs: readonly number[]) => xs.map((x, i) => ({ id: `${i + 1}`, x }))

/**
 * Two machines: the left one fixed, as the books' examples have it, the right one to be moved on to
 * its line. The tolerances are so small that only the line itself is right.
 */
export const pair = ({
  feet,
  heldFeet,
  plane,
  found,
  units = { length: 'in', fine: 'mil' },
  seenFrom = 'right',
  growth,
  aim,
  states,
  tolerance = 0.00001,
}: Pair) => ({
  format: 'holdfast-train',
  version: 1,
  name: 'Two machines',
  units,
  clock: { seenFrom },
  machines: [
    {
      id: 'fixed',
      name: 'Fixed',
      axis: { z: 10 },
      ...(heldFeet ? { held: true } : { anchored: 'fixed in the example' }),
      feet: feetAt(heldFeet ?? []),
    },
    {
      id: 'moved',
      name: 'Moved',
      axis: { z: 10 },
      feet: feetAt(feet),
      ...(growth && { growth }),
    },
  ],
  couplings: [
    {
      id: 'coupling',
      left: { machine: 'fixed', plane },
      right: { machine: 'moved', plane },
      tolerance: { offset: tolerance, angle: tolerance },
      ...(aim && { aim }),
      found,
    },
  ],
  ...(states && { states }),
})

/** Readings of a whole turn in the order top, 3, bottom, 9. */
export const turn = (top: number, three: number, bottom: number, nine: number) => [
  [12, top],
  [3, three],
  [6, bottom],
  [9, nine],
]

/** Two readings of half a turn: zero at the first hour. */
export const swing = (from: number, to: number, value: number) => [
  [from, 0],
  [to, value],
]
