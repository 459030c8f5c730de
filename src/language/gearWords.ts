import type { Across, GearLift, ShaftLift } from '../mechanics/gearLift'
import { forceSign, newtonsPer, type DocumentUnits } from '../mechanics/units'
import { fineText } from './amounts'
import { towardSide, type Sided } from './sides'

/** What the teeth of a gear do, and where each of its shafts goes and why; sentences without their stops. */
export interface GearSaid {
  readonly mesh: string
  readonly driving: string
  readonly driven: string
}

/** @param names of the driving and the driven shaft, as they stand within a sentence */
export function gearSaid(
  sided: Sided,
  units: DocumentUnits,
  toward: Across,
  lift: GearLift,
  names: Readonly<Record<'driving' | 'driven', string>>,
): GearSaid {
  const { tangential, radial, thrust, driving, driven } = lift
  const along = thrust === 0 ? '' : `, and ${forceText(thrust, units)} along the shaft`
  const length = Math.hypot(toward.y, toward.z)
  // what is not apart goes along the pitch circles
  const push = {
    y: driven.mesh.y - (toward.y / length) * radial,
    z: driven.mesh.z - (toward.z / length) * radial,
  }
  return {
    mesh: `${names.driving} turns ${driving.turns}: its teeth pass ${names.driven}, which lies at its ${hourText(toward)}, and push it ${pushText(push)}; they are pushed ${pushText({ y: -push.y, z: -push.z })} themselves, ${forceText(tangential, units)} along the pitch circles and ${forceText(radial, units)} apart${along}`,
    driving: shaftSaid(sided, units, driving, names.driving),
    driven: shaftSaid(sided, units, driven, names.driven),
  }
}

function shaftSaid(sided: Sided, units: DocumentUnits, shaft: ShaftLift, name: string): string {
  const { turns, mesh, weight, load, rise, side } = shaft
  const across =
    fineText(Math.abs(side), units) === fineText(0, units)
      ? ''
      : ` and ${fineText(Math.abs(side), units)} ${towardSide(sided, side)}`
  return `${name} turns ${turns}. The teeth push it toward ${hourText(mesh)}, and it weighs ${forceText(weight, units)}: together ${forceText(size(load), units)} press it toward ${hourText(load)} of its bearings, and from the bottom it goes ${fineText(rise, units)} up${across}`
}

const size = ({ y, z }: Across): number => Math.hypot(y, z)

/** "up", "down", "toward 3 o'clock". */
function pushText(push: Across): string {
  const hour = hourText(push)
  return hour === "12 o'clock" ? 'up' : hour === "6 o'clock" ? 'down' : `toward ${hour}`
}

/** A force (N) in kN or lb, three digits of it. */
const forceText = (newtons: number, units: DocumentUnits): string =>
  `${String(Number((newtons / newtonsPer[units.length]).toPrecision(3)))} ${forceSign[units.length]}`

/** The hour toward which something points, to the half hour: "1:30", "12 o'clock". */
function hourText({ y, z }: Across): string {
  const halves = (Math.round((Math.atan2(y, z) * 12) / Math.PI) + 24) % 24
  const hour = Math.floor(halves / 2) || 12
  return halves % 2 === 0 ? `${hour} o'clock` : `half past ${hour}`
}
