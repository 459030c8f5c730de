import { growthOf, lineValueAt } from '../growth'
import type { HotCheck } from '../hotCheck'
import { tol } from '../tolerances'
import type { Body, GrowthPoint, Train } from '../train'
import { growthEndsOf } from '../uncertainty/growthPoints'
import type { Micrometres, Millimetres } from '../units'
import { across, type AcrossWay, type Chain } from './chain'
import { grownAcross, type MachineMovement, type Movement } from './movement'

/** How far an axis moved at a place, beside the growth in use there. */
export interface GrowthFound {
  readonly quantity: 'rise' | 'side'
  readonly axis: GrowthPoint['axis']
  readonly x: Millimetres
  readonly entered: Micrometres
  readonly found: Micrometres
  /** Standard uncertainty of what was found: of the difference from what was entered, the machine it is told against taken as exact. */
  readonly u: Micrometres
  readonly sigmas: number
}

/** A machine's movement on the run. */
export interface MachineGrowth {
  readonly machine: number
  /** Directions that what was found tells of; in the others, and of a datum, growth stays as it was entered. */
  readonly told: readonly AcrossWay[]
  readonly rows: readonly GrowthFound[]
}

/**
 * Every machine of the chains at the first and the last row of its feet, or at its planes: its growth and what it came
 * to. At two places, always: at one alone its tilt would be lost, and with it part of what its couplings ran with.
 */
export const growthFound = (train: Train, check: HotCheck, movement: Movement): MachineGrowth[] =>
  movement.machines.map((one) => {
    const told = across.filter((way) => isTold(movement.chains, one.machine, way))
    return {
      machine: one.machine,
      told,
      rows: told.flatMap((way) => rowsOf(train, check, one, way)),
    }
  })

/** How far from its only place a machine is told of once more (mm). */
const further = 1000

/** The ends of a machine; of one that stands on a single row and has its planes there, too, a place a metre on as well. */
function placesOf(train: Train, body: Body, machine: number): Millimetres[] {
  const ends = growthEndsOf(train, body, machine)
  const [only = 0, ...others] = ends
  if (others.length > 0) return ends
  const planes = train.couplings.flatMap(({ left, right, p, q }) => [
    ...(right === machine ? [q] : []),
    ...(left === machine ? [p] : []),
  ])
  const [first, last] = [Math.min(only, ...planes), Math.max(only, ...planes)]
  if (last - first > tol.sameX) return [first, last]
  // away from its coupling, where the machine stands
  return machine === 0 ? [only - further, only] : [only, only + further]
}

/** The datum of a direction is what the others are told against: nothing is told of it. */
function isTold(chains: readonly Chain[], machine: number, way: AcrossWay): boolean {
  const chain = chains.find(({ machines }) => machines.includes(machine))
  const held = chain?.held[way]
  return held !== undefined && !(held.by === 'datum' && held.machine === machine)
}

function rowsOf(
  train: Train,
  { state }: HotCheck,
  { machine, x, by, errors }: MachineMovement,
  way: AcrossWay,
): GrowthFound[] {
  const body = train.machines[machine]
  if (!body) return []
  const quantity = grownAcross[way]
  const [value, tilt] = way === 'y' ? [0, 1] : [2, 3]
  const at = (numbers: readonly number[], place: Millimetres) =>
    (numbers[value] ?? 0) + (numbers[tilt] ?? 0) * (place - x)
  const places = placesOf(train, body, machine)
  const grownAt = (axis: 'left' | 'right', of: 'rise' | 'side', place: Millimetres) =>
    lineValueAt(growthOf(body, train.states[state]?.id ?? '', axis)[of], place)
  // axes whose growth was entered apart went apart, also where they lie in one line
  const apart =
    body.twoAxes ||
    places.some((place) =>
      (['rise', 'side'] as const).some(
        (of) => grownAt('left', of, place) !== grownAt('right', of, place),
      ),
    )
  const axes = apart ? (['left', 'right'] as const) : (['both'] as const)
  return axes.flatMap((axis) =>
    places.map((place): GrowthFound => {
      const entered = grownAt(axis === 'both' ? 'left' : axis, quantity, place)
      const more = at(by, place)
      const u = Math.hypot(...errors.map((error) => at(error.by, place)))
      const sigmas = more === 0 ? 0 : Math.abs(more) / u
      return { quantity, axis, x: place, entered, found: entered + more, u, sigmas }
    }),
  )
}
