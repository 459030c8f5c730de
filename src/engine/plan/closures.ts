import { tol } from '../../mechanics/tolerances'
import type { Micrometres, Millimetres } from '../../mechanics/units'
import type { Coupling, ReadingSet, Train } from '../../mechanics/train'
import { asFound } from '../../mechanics/readings/asFound'
import { closure } from '../../mechanics/readings/closure'
import { publishedLimit, type SourcedLimit } from './publishedLimit'

/** How a full sweep closes, and what half of a closure that is off would do. */
export interface ClosureCheck {
  readonly coupling: string
  /** Index in `found`. */
  readonly set: number
  readonly value: Micrometres
  readonly limit: SourcedLimit
  readonly within: boolean
  /** At the far feet of the two machines: what one reading wrong by half the closure would do. */
  readonly doubt: readonly FarFeet[]
}

interface FarFeet {
  /** Index in `machines`. */
  readonly machine: number
  readonly x: Millimetres
  /** Either way; if a top or a bottom is wrong. */
  readonly rise: Micrometres
  /** Either way; if a reading at a side is wrong. */
  readonly side: Micrometres
}

/** Every full sweep that is used. */
export function closureChecks(train: Train, coupling: Coupling): ClosureCheck[] {
  const limit = publishedLimit(train, 'closure')
  return coupling.found.flatMap((set, i) => {
    const value = set.used ? closure(set) : undefined
    if (value === undefined) return []
    const within = Math.abs(value) <= limit.value + tol.onLimit
    return [
      {
        coupling: coupling.id,
        set: i,
        value,
        limit,
        within,
        doubt: within ? [] : doubtOf(train, coupling, i, Math.abs(value) / 2),
      },
    ]
  })
}

/** Sweeps that are used but were not read at all four of 12, 3, 6 and 9: nothing tells whether they close. */
export const sweepsWithoutClosure = (coupling: Coupling): number[] =>
  coupling.found.flatMap((set, i) =>
    set.used && set.kind !== 'line' && closure(set) === undefined ? [i] : [],
  )

/**
 * The line is linear in the readings: reduced again with one reading changed, its difference is what
 * that error does, carried along x to the feet farthest from the coupling.
 */
function doubtOf(train: Train, coupling: Coupling, set: number, by: Micrometres): FarFeet[] {
  const { line } = asFound(coupling)
  const changed = (hour: number) => asFound(withReading(coupling, set, hour, by)).line
  const [low, aside] = [changed(6), changed(3)]
  return [coupling.left, coupling.right].flatMap((machine) => {
    const feet = train.machines[machine]?.feet ?? []
    const [first, ...others] = feet.map(({ x }) => x)
    if (first === undefined) return []
    const far = (x: number) => Math.abs(x - coupling.mid)
    const x = others.reduce((a, b) => (far(b) > far(a) ? b : a), first)
    const arm = x - coupling.mid
    return [
      {
        machine,
        x,
        rise: Math.abs(low.z - line.z + (low.sz - line.sz) * arm),
        side: Math.abs(aside.y - line.y + (aside.sy - line.sy) * arm),
      },
    ]
  })
}

const withReading = (coupling: Coupling, index: number, hour: number, by: number): Coupling => ({
  ...coupling,
  found: coupling.found.map((set, i): ReadingSet =>
    i !== index || set.kind === 'line'
      ? set
      : {
          ...set,
          readings: set.readings.map((reading) =>
            reading.hour === hour ? { hour, value: reading.value + by } : reading,
          ),
        },
  ),
})
