import { fineDecimals } from '../../../language/amounts'
import type { MeasuredGrowth } from '../../../document/edits/measuredGrowth'
import type { GrowthPointDocument } from '../../../document/schema'
import { growthOf, lineValueAt } from '../../../mechanics/growth'
import type { HotCheck } from '../../../mechanics/hotCheck'
import { grownAcross } from '../../../mechanics/hotCheck/movement'
import type { GrowthFound, MachineGrowth } from '../../../mechanics/hotCheck/growthFound'
import { growthQuantities, type Train } from '../../../mechanics/train'
import { toFine, toLength, type Micrometres } from '../../../mechanics/units'

/** The growth that a hot check found, as a source "measured" with its date and person, in the document's units. */
export const measuredGrowth = (
  train: Train,
  check: HotCheck,
  found: readonly MachineGrowth[],
): MeasuredGrowth[] =>
  found.flatMap((one) => (one.told.length === 0 ? [] : [measuredOf(train, check, one)]))

function measuredOf(train: Train, check: HotCheck, one: MachineGrowth): MeasuredGrowth {
  const quantities = one.told.map((way) => grownAcross[way])
  const places = one.rows.filter(({ quantity }) => quantity === quantities[0])
  return {
    machine: train.machines[one.machine]?.id ?? '',
    quantities,
    points: places.map((place) => pointOf(train, check, one.rows, place)),
    otherwise: otherwiseOf(train, check, one),
  }
}

/** One point for all quantities at a place, as unsure as the less sure of them. */
function pointOf(
  train: Train,
  check: HotCheck,
  rows: readonly GrowthFound[],
  { x, axis }: GrowthFound,
): GrowthPointDocument {
  const here = rows.filter((row) => row.x === x && row.axis === axis)
  const value = (quantity: 'rise' | 'side') => here.find((row) => row.quantity === quantity)?.found
  const [rise, side] = [value('rise'), value('side')]
  return {
    at: toLength(x, train.units),
    ...(axis !== 'both' && { axis }),
    ...(rise !== undefined && { rise: digitsOf(train, rise) }),
    ...(side !== undefined && { side: digitsOf(train, side) }),
    u: digitsOf(train, Math.max(...here.map(({ u }) => u))),
    source: 'measured',
    ...(check.when !== undefined && { when: check.when }),
    ...(check.by !== undefined && { by: check.by }),
    why: `by hot check “${check.name}”`,
  }
}

/** In the document's fine unit, two digits more than people read: what a coupling ran with comes of it again. */
const digitsOf = ({ units }: Train, value: Micrometres): number =>
  Number(toFine(value, units).toFixed(fineDecimals[units.fine] + 2))

/** What a machine grows between two states, of what was not measured, at the places of the points. */
function otherwiseOf(train: Train, check: HotCheck, one: MachineGrowth): GrowthPointDocument[] {
  const body = train.machines[one.machine]
  const state = train.states[check.state]?.id ?? ''
  if (!body?.growthBetween.has(state)) return []
  const measured = one.told.map((way) => grownAcross[way])
  const places = one.rows.filter(({ quantity }) => quantity === measured[0])
  return places.map(({ x, axis }) => {
    const grown = growthOf(body, state, axis === 'both' ? 'left' : axis)
    const rest = growthQuantities.filter(
      (quantity) => !measured.some((other) => other === quantity),
    )
    return {
      at: toLength(x, train.units),
      ...(axis !== 'both' && { axis }),
      ...Object.fromEntries(
        rest.map((quantity) => [quantity, digitsOf(train, lineValueAt(grown[quantity], x))]),
      ),
      why: 'between the two states, as before the hot check',
    }
  })
}
