import { growthQuantities, type GrowthQuantity } from '../../mechanics/train'
import type { GrowthPointDocument, MachineDocument, TrainDocument } from '../schema'

/** Growth of a machine in a state as it was measured, in the document's units. */
export interface MeasuredGrowth {
  readonly machine: string
  /** What the points give; all else stays as it was. */
  readonly quantities: readonly GrowthQuantity[]
  readonly points: readonly GrowthPointDocument[]
  /** What the machine has there without points of its own, from the two states it lies between, as far as it is to stay. */
  readonly otherwise: readonly GrowthPointDocument[]
}

/**
 * The document with measured growth in use in a state: what counted before stays beside it and counts no more, but for
 * the quantities that were not measured, which go on as points of their own.
 */
export const withMeasuredGrowth = (
  document: TrainDocument,
  state: string,
  measured: readonly MeasuredGrowth[],
): TrainDocument => ({
  ...document,
  machines: document.machines.map((machine) => {
    const own = measured.find((one) => one.machine === machine.id)
    return own ? grown(machine, state, own) : machine
  }),
})

function grown(machine: MachineDocument, state: string, own: MeasuredGrowth): MachineDocument {
  const before = machine.growth?.[state] ?? []
  const counted = before.filter(({ use }) => use !== false)
  const kept =
    counted.length === 0 ? own.otherwise : counted.flatMap((point) => left(point, own.quantities))
  const points = [
    ...own.points,
    ...kept,
    ...before.map((point) => (point.use === false ? point : { ...point, use: false })),
  ]
  return { ...machine, growth: { ...machine.growth, [state]: points } }
}

/** What a point gives beside some quantities; nothing where it gives no more. */
function left(
  point: GrowthPointDocument,
  without: readonly GrowthQuantity[],
): GrowthPointDocument[] {
  const stays = (quantity: string) => !without.some((one) => one === quantity)
  const range = Object.entries(point.range ?? {}).filter(([quantity]) => stays(quantity))
  const kept = Object.entries(point).filter(
    ([key]) => key !== 'range' && stays(key === 'heat' ? 'rise' : key),
  )
  const gives = range.length > 0 || kept.some(([key]) => gained.has(key))
  const next = {
    ...Object.fromEntries(kept),
    ...(range.length > 0 && { range: Object.fromEntries(range) }),
  }
  return gives ? [next as GrowthPointDocument] : []
}

const gained = new Set<string>([...growthQuantities, 'heat'])
