import { tidy } from '../../language/tidy'
import type { GrowthPointDocument, MachineDocument, TrainDocument } from '../schema'
import { growthQuantities } from '../../mechanics/train'
import { micrometresPer, millimetresPer, type DocumentUnits } from '../../mechanics/units'

/**
 * A growth point scaled: what is given in lengths by the factor; heat by its warming, so that the
 * temperature it starts from stays and the one it goes to is moved. Heights and coefficients stay. Who measured it, and
 * when, was said of the other state.
 * @param factor no unit
 */
function scaledPoint(point: GrowthPointDocument, factor: number): GrowthPointDocument {
  const { heat, range } = point
  const times = (value: number | undefined) =>
    value === undefined ? undefined : tidy(value * factor)
  const next = {
    ...point,
    source: undefined,
    when: undefined,
    by: undefined,
    rise: times(point.rise),
    side: times(point.side),
    axial: times(point.axial),
    u: point.u === undefined ? undefined : tidy(point.u * Math.abs(factor)),
    range: range && scaledRange(range, factor),
    heat: heat && { ...heat, to: tidy(heat.from + (heat.to - heat.from) * factor) },
  }
  return given(next)
}

/** Intervals scaled, lower end first whatever the sign of the factor. */
function scaledRange(
  range: NonNullable<GrowthPointDocument['range']>,
  factor: number,
): NonNullable<GrowthPointDocument['range']> {
  const next: NonNullable<GrowthPointDocument['range']> = {}
  for (const quantity of growthQuantities) {
    const interval = range[quantity]
    if (!interval) continue
    const [a, b] = [tidy(interval[0] * factor), tidy(interval[1] * factor)]
    next[quantity] = a < b ? [a, b] : [b, a]
  }
  return next
}

/**
 * Growth of one state in another, scaled, for every machine or one; what stood there is replaced.
 * @param factor no unit
 */
export function copiedGrowth(
  document: TrainDocument,
  from: string,
  to: string,
  factor: number,
  machine?: string,
): TrainDocument {
  return {
    ...document,
    machines: document.machines.map((body): MachineDocument => {
      const points = body.growth?.[from]
      if (points === undefined || (machine !== undefined && body.id !== machine)) return body
      return {
        ...body,
        growth: { ...body.growth, [to]: points.map((point) => scaledPoint(point, factor)) },
      }
    }),
  }
}

/** Machines whose growth in a state would be replaced by a copy from another. */
export const replacedBy = (document: TrainDocument, from: string, to: string): number =>
  document.machines.filter(
    ({ growth }) => growth?.[from] !== undefined && (growth[to] ?? []).length > 0,
  ).length

/**
 * The rise of a point in the document's fine unit: what is given plus height x expansion x warming;
 * undefined while a number that it needs is missing. Height in the length unit, expansion in 1e-6 a
 * degree: mm x 1e-6 x 1000 = um.
 */
export function riseOf(point: GrowthPointDocument, units: DocumentUnits): number | undefined {
  const heat = point.heat as Partial<NonNullable<GrowthPointDocument['heat']>> | undefined
  if (heat === undefined) return point.rise
  const { height, expansion, from, to } = heat
  if (height === undefined || expansion === undefined) return undefined
  if (from === undefined || to === undefined) return undefined
  const um = height * millimetresPer[units.length] * expansion * 1e-3 * (to - from)
  return tidy((point.rise ?? 0) + um / micrometresPer[units.fine])
}

/**
 * A point with every value that it gives as an interval of no width, to be widened, and no u beside it. A rise that comes
 * from temperatures stays one.
 */
export function asIntervals({ range, ...point }: GrowthPointDocument): GrowthPointDocument {
  const intervals: NonNullable<GrowthPointDocument['range']> = { ...range }
  const kept: GrowthPointDocument = { ...point }
  for (const quantity of growthQuantities) {
    const value = point[quantity]
    if (value === undefined || (quantity === 'rise' && point.heat)) continue
    intervals[quantity] = [value, value]
    kept[quantity] = undefined
  }
  if (Object.keys(intervals).length === 0) return { ...point }
  return given({ ...kept, u: undefined, range: intervals })
}

/** A point with the middle of each of its intervals as its value. */
export function asValues({ range, ...point }: GrowthPointDocument): GrowthPointDocument {
  const values: GrowthPointDocument = { ...point }
  for (const quantity of growthQuantities) {
    const [low, high]: readonly (number | undefined)[] = range?.[quantity] ?? []
    const middle = low === undefined || high === undefined ? (low ?? high) : (low + high) / 2
    if (middle !== undefined) values[quantity] = tidy(middle)
  }
  return given(values)
}

/** Only what is there. */
const given = (point: GrowthPointDocument): GrowthPointDocument =>
  Object.fromEntries(
    Object.entries(point).filter(([, value]) => value !== undefined),
  ) as GrowthPointDocument

/** A point at the middle of a machine's feet, where there are any; all else is asked for. */
export function newGrowthPoint(machine: MachineDocument): GrowthPointDocument {
  const xs = machine.feet.map(({ x }) => x).filter((x) => Number.isFinite(x))
  const at = xs.length === 0 ? undefined : tidy((Math.min(...xs) + Math.max(...xs)) / 2)
  return { at } as GrowthPointDocument
}
