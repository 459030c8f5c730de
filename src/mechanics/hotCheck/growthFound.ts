import { growthOf, lineValueAt } from '../growth'
import type { HotCheck } from '../hotCheck'
import type { GrowthPoint, Train } from '../train'
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

/** Every machine of the chains at the first and the last row of its feet, or at its planes: its growth and what it came to. */
export const growthFound = (train: Train, check: HotCheck, movement: Movement): MachineGrowth[] =>
  movement.machines.map((one) => {
    const told = across.filter((way) => isTold(movement.chains, one.machine, way))
    return {
      machine: one.machine,
      told,
      rows: told.flatMap((way) => rowsOf(train, check, one, way)),
    }
  })

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
  const axes = body.twoAxes ? (['left', 'right'] as const) : (['both'] as const)
  return axes.flatMap((axis) =>
    growthEndsOf(train, body, machine).map((place): GrowthFound => {
      const grown = growthOf(body, train.states[state]?.id ?? '', axis === 'both' ? 'left' : axis)
      const entered = lineValueAt(grown[quantity], place)
      const more = at(by, place)
      const u = Math.hypot(...errors.map((error) => at(error.by, place)))
      const sigmas = more === 0 ? 0 : Math.abs(more) / u
      return { quantity, axis, x: place, entered, found: entered + more, u, sigmas }
    }),
  )
}
