import type { Kilograms, Micrometres, Millimetres, NewtonMetres } from './units'

/**
 * Where the shafts of a gear go within the clearance of their bearings, from cold, at rest on the bottom, to running.
 *
 * The clock is seen from one end: y is + toward 3 o'clock, z up. Toward: the unit vector from the driving shaft to the
 * driven one.
 *
 * - A shaft that turns clockwise carries the metal at its 12 o'clock toward 3: a point at r from its centre moves along
 *   (r.z, -r.y); counter-clockwise the other way.
 * - At the mesh the teeth of the driving shaft push those of the driven one the way they move themselves: along
 *   (t.z, -t.y) for a driver that turns clockwise. They push back on the driver by as much (action and reaction). So one
 *   shaft is loaded up and the other down where they lie side by side.
 * - Teeth of one pressure angle also push the shafts apart: the driven one along t, the driver against it.
 * - Each shaft goes to where the sum of this and of its weight presses it: on that line through the middle of its bearing,
 *   short of the wall by the film of oil. Cold it lies on the bottom, without a film.
 *
 * Not counted: the turn of the film's attitude angle, growth of the case, and how torque bends it.
 */
export interface GearDrive {
  /** Watts through the mesh. */
  readonly power: number
  /** Of the driving shaft (rpm), and its pitch radius. */
  readonly speed: number
  readonly radius: Millimetres
  /** Normal pressure angle and helix angle (degrees); a helix of 0 is a spur gear. */
  readonly pressureAngle: number
  readonly helix: number
  /** How the driving shaft turns, seen from the end from which the clock is seen. */
  readonly turns: 'clockwise' | 'counter-clockwise'
  /** From the driving shaft to the driven one. */
  readonly toward: Across
  readonly driving: GearShaft
  readonly driven: GearShaft
}

/** Toward 3 o'clock and up. */
export interface Across {
  readonly y: number
  readonly z: number
}

export interface GearShaft {
  readonly mass: Kilograms
  /** Of its bearings, across the diameter. */
  readonly clearance: Micrometres
  /** Least film of oil, running. */
  readonly film: Micrometres
}

/** Newtons, but for what a name says. */
export interface GearLift {
  readonly torque: NewtonMetres
  readonly tangential: number
  readonly radial: number
  /** Along the shafts; which way, the hand of the helix says. 0 of spur gears; within itself of double-helical ones. */
  readonly thrust: number
  readonly driving: ShaftLift
  readonly driven: ShaftLift
}

export interface ShaftLift {
  readonly turns: GearDrive['turns']
  /** What the mesh does to it, what it weighs, and what both press its bearings with. */
  readonly mesh: Across
  readonly weight: number
  readonly load: Across
  /** From cold to running. */
  readonly rise: Micrometres
  readonly side: Micrometres
}

/** Standard acceleration of gravity (m/s2), exact by definition. */
const gravity = 9.80665

/**
 * @returns undefined where no answer can be had: no power, speed, radius, or distance between the shafts; a film thicker
 * than half the clearance; sizes beyond what a number can hold
 */
export function gearLift(drive: GearDrive): GearLift | undefined {
  const { power, speed, radius, pressureAngle, helix, turns, driving, driven } = drive
  const apart = Math.hypot(drive.toward.y, drive.toward.z)
  const sound = (angle: number) => angle >= 0 && angle < 90
  if (!(power > 0 && speed > 0 && radius > 0 && apart > 0)) return undefined
  if (!sound(pressureAngle) || !sound(helix)) return undefined
  if ([driving, driven].some(({ clearance, film }) => !(film >= 0 && 2 * film <= clearance)))
    return undefined
  // power = torque times angular speed
  const torque = power / ((speed * 2 * Math.PI) / 60)
  const tangential = (torque / radius) * 1000
  const [slant, lead] = [pressureAngle, helix].map((degrees) => (degrees * Math.PI) / 180)
  // in the normal plane the push along the pitch circles is Wt / cos(helix), and tan(pressure angle) of it goes apart
  const radial = (tangential * Math.tan(slant ?? 0)) / Math.cos(lead ?? 0)
  const t = { y: drive.toward.y / apart, z: drive.toward.z / apart }
  const way = turns === 'clockwise' ? 1 : -1
  const onDriven = {
    y: way * t.z * tangential + t.y * radial,
    z: -way * t.y * tangential + t.z * radial,
  }
  const onDriving = { y: -onDriven.y, z: -onDriven.z }
  const lift = {
    torque,
    tangential,
    radial,
    thrust: tangential * Math.tan(lead ?? 0),
    driving: shaftLift(driving, onDriving, turns),
    driven: shaftLift(driven, onDriven, turns === 'clockwise' ? 'counter-clockwise' : 'clockwise'),
  }
  // sizes that no gear has may leave what a number can hold
  const all = [
    lift.thrust,
    radial,
    torque,
    ...[lift.driving, lift.driven].flatMap(({ rise, side }) => [rise, side]),
  ]
  return all.every(Number.isFinite) ? lift : undefined
}

function shaftLift(shaft: GearShaft, mesh: Across, turns: GearDrive['turns']): ShaftLift {
  const weight = shaft.mass * gravity
  const load = { y: mesh.y, z: mesh.z - weight }
  return { turns, mesh, weight, load, ...journalLift(shaft, load) }
}

/** How far a journal goes in its bearing from the bottom, without a film, to where a load presses it, short of the film. */
export function journalLift(
  { clearance, film }: Pick<GearShaft, 'clearance' | 'film'>,
  load: Across,
): { readonly rise: Micrometres; readonly side: Micrometres } {
  const size = Math.hypot(load.y, load.z)
  // a load of nothing presses it nowhere: it lies in the middle
  const reach = size === 0 ? 0 : (clearance / 2 - film) / size
  return { rise: clearance / 2 + reach * load.z, side: reach * load.y }
}
