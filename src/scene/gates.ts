import { isEngaged } from '../mechanics/engaged'
import { lineValueAt } from '../mechanics/growth'
import type { Micrometres, Millimetres } from '../mechanics/units'
import type { Coupling, Train } from '../mechanics/train'
import { checksOf, checkValue, type Check } from '../mechanics/misalignment/check'
import { addMisalignments, stateShift } from '../mechanics/misalignment/stateShift'
import type { Misalignment } from '../mechanics/readings/equation'
import type { AxisLines } from './axisLines'

/**
 * The opening that a planned cold line must pass at one place, everything else as planned, so that
 * every state stays within the share. Values count from the sheet's zero.
 */
export interface Gate {
  readonly id: string
  readonly coupling: number
  /** The machine whose line passes it. */
  readonly machine: number
  readonly what: Check['what']
  readonly way: 'rise' | 'side'
  readonly x: Millimetres
  /** Where the planned line passes. */
  readonly passes: Micrometres
  /** One opening a state, in the order of `train.states`. */
  readonly states: readonly Opening[]
  /** What is common to all of them, with the state that sets each edge. */
  readonly low: { readonly value: Micrometres; readonly state: number }
  readonly high: { readonly value: Micrometres; readonly state: number }
}

interface Opening {
  readonly low: Micrometres
  readonly high: Micrometres
}

/**
 * The gates of a planned train; none where there is no plan.
 * @param shifts of each coupling in each state (um, mrad)
 */
export function gatesOf(
  train: Train,
  lines: readonly AxisLines[],
  shifts: readonly (readonly Misalignment[])[],
): Gate[] {
  return train.couplings.flatMap((coupling, c) => {
    const left = lines.find((l) => l.machine === coupling.left && l.axis !== 'left')?.planned
    const right = lines.find((l) => l.machine === coupling.right && l.axis !== 'right')?.planned
    if (!left || !right) return []
    const { mid } = coupling
    const cold: Misalignment = {
      y: lineValueAt(right.side, mid) - lineValueAt(left.side, mid),
      z: lineValueAt(right.rise, mid) - lineValueAt(left.rise, mid),
      sy: right.side.slope - left.side.slope,
      sz: right.rise.slope - left.rise.slope,
    }
    return checksOf(coupling).flatMap((check) =>
      (['rise', 'side'] as const).map((way): Gate => {
        const place = placeOf(train, coupling, check)
        const passing = place.machine === coupling.left ? left : right
        const passes = lineValueAt(passing[way], place.x)
        const states = openings(train, coupling, check, way, cold, shifts[c] ?? []).map(
          ({ low, high }) => ({
            low: passes + place.lever * low,
            high: passes + place.lever * high,
          }),
        )
        const at = (pick: (a: Opening, b: Opening) => boolean): number =>
          states.reduce((best, opening, s) => {
            const now = states[best]
            return now && pick(opening, now) ? s : best
          }, 0)
        const lowest = at((a, b) => a.low > b.low)
        const highest = at((a, b) => a.high < b.high)
        return {
          id: `${way} ${check.what} ${coupling.id}`,
          coupling: c,
          machine: place.machine,
          what: check.what,
          way,
          x: place.x,
          passes,
          states,
          low: { value: states[lowest]?.low ?? 0, state: lowest },
          high: { value: states[highest]?.high ?? 0, state: highest },
        }
      }),
    )
  })
}

/**
 * Where a check becomes an opening: the angle at a flex plane is what the other machine's line does
 * at its own plane, one span away; the offset is read at mid-span; the angle between the shafts at
 * the nearest foot of the right machine, while its line passes mid-span where planned.
 * `lever` turns the check's value into a displacement there (mm, or no unit for the offset).
 */
function placeOf(
  train: Train,
  { left, right, p, q, mid }: Coupling,
  { what }: Check,
): { machine: number; x: Millimetres; lever: number } {
  switch (what) {
    case 'left plane':
      return { machine: right, x: q, lever: q - p }
    case 'right plane':
      return { machine: left, x: p, lever: q - p }
    case 'offset':
      return { machine: right, x: mid, lever: 1 }
    case 'angle': {
      const feet = train.machines[right]?.feet.map(({ x }) => x).filter((x) => x > mid) ?? []
      const x = feet.length > 0 ? Math.min(...feet) : mid + 500
      return { machine: right, x, lever: x - mid }
    }
  }
}

/** What each state does to each coupling, before anything is moved. */
export const shiftsOf = (train: Train): Misalignment[][] =>
  train.couplings.map((coupling) =>
    train.states.map(({ id }) => stateShift(train, coupling, id).misalignment),
  )

const still: Misalignment = { y: 0, z: 0, sy: 0, sz: 0 }

/** How much a check's value may still change down and up in each state; engine units of the check. */
function openings(
  train: Train,
  coupling: Coupling,
  check: Check,
  way: 'rise' | 'side',
  cold: Misalignment,
  shifts: readonly Misalignment[],
): Opening[] {
  return train.states.map((state, s) => {
    // where it is not engaged nothing is in the way
    if (!isEngaged(coupling, state.id)) return { low: -Infinity, high: Infinity }
    const d = addMisalignments(cold, shifts[s] ?? still)
    const { y, z } = checkValue(check, d)
    const [own, other] = way === 'rise' ? [z, y] : [y, z]
    const allowed = train.plan.share * check.limit * state.factor
    const room =
      coupling.tolerance.shape === 'round'
        ? Math.sqrt(Math.max(0, allowed ** 2 - other ** 2))
        : allowed
    return { low: -room - own, high: room - own }
  })
}
