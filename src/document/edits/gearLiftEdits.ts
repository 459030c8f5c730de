import { tidy } from '../../language/tidy'
import { fineDecimals } from '../../language/amounts'
import type { Across, GearDrive, GearLift, GearShaft, ShaftLift } from '../../mechanics/gearLift'
import {
  fineSign,
  kilogramsPer,
  massSign,
  micrometresPer,
  millimetresPer,
  powerSign,
  toFine,
  wattsPer,
  type DocumentUnits,
} from '../../mechanics/units'
import type { GrowthPointDocument, MachineDocument, TrainDocument } from '../schema'
import { newGrowthPoint } from './growthEdits'

type End = 'left' | 'right'

/** From the shaft at a machine's left end to the one at its right, in the length unit; undefined where both are one. */
export function shaftsApart({ axis }: MachineDocument): Across | undefined {
  if (!('left' in axis)) return undefined
  const { left, right } = axis
  const apart = { y: (right.y ?? 0) - (left.y ?? 0), z: right.z - left.z }
  return apart.y === 0 && apart.z === 0 ? undefined : apart
}

/** The lifts by the end of the machine at which each shaft comes out. */
export const liftsByEnd = (lift: GearLift, drives: End): Readonly<Record<End, ShaftLift>> =>
  drives === 'left'
    ? { left: lift.driving, right: lift.driven }
    : { left: lift.driven, right: lift.driving }

/**
 * The document with the lift of each shaft added to what a machine grows in a state: growth of the case and lift within the
 * bearings add up. Points that do not count stay as they are; a point of both axes becomes one of each.
 * @param why kept with each point that changes
 */
export function withGearLift(
  document: TrainDocument,
  machine: number,
  state: string,
  lifts: Readonly<Record<End, Pick<ShaftLift, 'rise' | 'side'>>>,
  why: string,
): TrainDocument {
  const units = { ...document.units, temperature: document.units.temperature ?? 'C' }
  // one digit more than people read
  const written = (value: number) =>
    Number(toFine(value, units).toFixed(fineDecimals[units.fine] + 1))
  return {
    ...document,
    machines: document.machines.map((one, m) => {
      if (m !== machine) return one
      const points = one.growth?.[state] ?? []
      const lifted = (['left', 'right'] as const).flatMap((axis) => {
        const own = points.filter((point) => point.use !== false && (point.axis ?? axis) === axis)
        const by = { rise: written(lifts[axis].rise), side: written(lifts[axis].side) }
        const all = own.length > 0 ? own : [{ ...newGrowthPoint(one), source: 'given' as const }]
        return raised(
          all.map((point) => ({ ...point, axis })),
          by,
          why,
        )
      })
      const beside = points.filter(({ use }) => use === false)
      return { ...one, growth: { ...one.growth, [state]: [...lifted, ...beside] } }
    }),
  }
}

/** Points of one axis with a rise and a side added to their lines. */
function raised(
  points: readonly GrowthPointDocument[],
  by: Readonly<Record<'rise' | 'side', number>>,
  why: string,
): GrowthPointDocument[] {
  return (['rise', 'side'] as const).reduce<GrowthPointDocument[]>(
    (list, way) => {
      const gives = (point: GrowthPointDocument) =>
        point[way] !== undefined ||
        point.range?.[way] !== undefined ||
        (way === 'rise' && point.heat !== undefined)
      // a line that nobody gave is level at the lift
      const none = !list.some(gives)
      return list.map((point) => (none || gives(point) ? added(point, way, by[way]) : point))
    },
    points.map((point) => ({ ...point, why: point.why ? `${point.why}; ${why}` : why })),
  )
}

function added(point: GrowthPointDocument, way: 'rise' | 'side', by: number): GrowthPointDocument {
  const interval = point.range?.[way]
  if (!interval) return { ...point, [way]: tidy((point[way] ?? 0) + by) }
  const [low, high] = interval
  return { ...point, range: { ...point.range, [way]: [tidy(low + by), tidy(high + by)] } }
}

/** What is asked of a gear, in words, in the order in which it is asked. */
export const gearFields = {
  power: 'power',
  speed: 'speed of the driving shaft',
  diameter: 'pitch diameter of the driving gear',
  pressureAngle: 'pressure angle',
  helix: 'helix angle',
  massLeft: 'mass that the left shaft carries',
  massRight: 'mass that the right shaft carries',
  clearanceLeft: 'clearance of the left bearings',
  clearanceRight: 'clearance of the right bearings',
  filmLeft: 'oil film of the left bearings',
  filmRight: 'oil film of the right bearings',
} as const
export type GearField = keyof typeof gearFields

/** In the units of the document; power in kW, or in hp where lengths are inches; angles in degrees. */
export type GearEntered = Readonly<Record<GearField, number | undefined>>

/** How the shafts of a gear lie and turn. */
export interface GearTurning {
  /** The end of the machine at which the driving shaft comes in. */
  readonly drives: End
  readonly turns: GearDrive['turns']
  /** From the shaft at the left end to the one at the right. */
  readonly apart: Across
}

/** A drive in engine units; or what it lacks, in words. */
export function gearDriveOf(
  entered: GearEntered,
  { drives, turns, apart }: GearTurning,
  units: DocumentUnits,
): { readonly drive: GearDrive } | { readonly lacks: readonly string[] } {
  const lacks = (Object.keys(gearFields) as GearField[]).filter((key) => entered[key] === undefined)
  if (lacks.length > 0) return { lacks: lacks.map((key) => gearFields[key]) }
  const value = (key: GearField) => entered[key] ?? NaN
  const shaft = (end: 'Left' | 'Right'): GearShaft => ({
    mass: value(`mass${end}`) * kilogramsPer[units.length],
    clearance: value(`clearance${end}`) * micrometresPer[units.fine],
    film: value(`film${end}`) * micrometresPer[units.fine],
  })
  const fromLeft = drives === 'left'
  const drive = {
    power: value('power') * wattsPer[units.length],
    speed: value('speed'),
    radius: (value('diameter') * millimetresPer[units.length]) / 2,
    pressureAngle: value('pressureAngle'),
    helix: value('helix'),
    turns,
    toward: fromLeft ? apart : { y: -apart.y, z: -apart.z },
    driving: shaft(fromLeft ? 'Left' : 'Right'),
    driven: shaft(fromLeft ? 'Right' : 'Left'),
  }
  return { drive }
}

/** What a lift was worked out from, as it is kept with the points: "gear lift: 5000 hp, 1800 rpm, ...". */
export function gearLiftWhy(
  entered: GearEntered,
  turning: GearTurning,
  units: DocumentUnits,
): string {
  const { length, fine } = units
  const told = (key: GearField, sign: string) => `${entered[key] ?? '?'} ${sign}`
  const pair = (key: 'mass' | 'clearance' | 'film', sign: string) =>
    `${key} ${entered[`${key}Left`] ?? '?'} and ${told(`${key}Right`, sign)}`
  return `gear lift: ${[
    told('power', powerSign[length]),
    told('speed', 'rpm'),
    `pitch diameter ${told('diameter', length)}`,
    `pressure angle ${told('pressureAngle', '°')}`,
    `helix ${told('helix', '°')}`,
    `${turning.drives} shaft drives, ${turning.turns}`,
    pair('mass', massSign[length]),
    pair('clearance', fineSign[fine]),
    pair('film', fineSign[fine]),
  ].join(', ')}`
}
