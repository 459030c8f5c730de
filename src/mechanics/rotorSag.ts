import type { Kilograms, Micrometres, Millimetres, Milliradians } from './units'

/**
 * A rotor at rest on two bearings, bent by its own weight: a beam of one stiffness with its mass spread evenly from the
 * far bearing to the coupling, and half the coupling as a weight at its end. Oil films, couples of seals and the turn of
 * the rotor are not counted.
 */
export interface Rotor {
  /** Between its bearings, and from the near one to the face of the coupling. */
  readonly span: Millimetres
  readonly overhang: Millimetres
  readonly mass: Kilograms
  /** Of a plain shaft that is as stiff. */
  readonly diameter: Millimetres
  /** Modulus of elasticity (GPa). */
  readonly modulus: number
  /** Of its half of the coupling. */
  readonly half: Kilograms
}

/** Where the end of a rotor lies against the straight line through its bearings. */
export interface RotorEnd {
  /** + is above. */
  readonly rise: Micrometres
  /** + rises toward the coupling. */
  readonly slope: Milliradians
}

/** Standard acceleration of gravity (m/s2), exact by definition. */
const gravity = 9.80665

/**
 * Superposition of the standard cases of a beam on two supports with an overhang (Timoshenko, Strength of Materials,
 * part I; from memory, and integrated anew in the tests). With w the weight a length, L the span, a the overhang, P the
 * weight at the end and M = w a^2 / 2 + P a over the near bearing, the beam leaves that bearing at
 *
 *   s = w L^3 / 24 EI - M L / 3 EI,
 *
 * and its end lies at s a - w a^4 / 8 EI - P a^3 / 3 EI, at a slope of s - w a^3 / 6 EI - P a^2 / 2 EI.
 * @returns undefined where it has no answer: span, diameter and modulus must be above 0, the rest not below it
 */
export function rotorEnd(rotor: Rotor): RotorEnd | undefined {
  const { span, overhang, mass, diameter, modulus, half } = rotor
  if (!(span > 0 && diameter > 0 && modulus > 0)) return undefined
  if (!(overhang >= 0 && mass >= 0 && half >= 0)) return undefined
  // N, mm: 1 GPa is 1000 N/mm2
  const stiffness = modulus * 1000 * ((Math.PI * diameter ** 4) / 64)
  const w = (mass * gravity) / (span + overhang)
  const p = half * gravity
  const a = overhang
  const moment = (w * a * a) / 2 + p * a
  const leaves = (w * span ** 3) / 24 - (moment * span) / 3
  const end = {
    rise: ((leaves * a - (w * a ** 4) / 8 - (p * a ** 3) / 3) / stiffness) * 1000,
    slope: ((leaves - (w * a ** 3) / 6 - (p * a * a) / 2) / stiffness) * 1000,
  }
  return Number.isFinite(end.rise) && Number.isFinite(end.slope) ? end : undefined
}

/** A line wanted at a coupling, up and down: right against left, at its faces. */
export interface CouplingLine {
  readonly offset: Micrometres
  /** + opens the faces at the bottom. */
  readonly slope: Milliradians
}

/** What is read at the coupling while all bearings lie on one straight line: how the ends of the rotors hang. */
export const hanging = (left: RotorEnd, right: RotorEnd): CouplingLine => ({
  offset: right.rise - left.rise,
  // the right rotor comes to the coupling from its other side
  slope: -right.slope - left.slope,
})

/** The line of the bearings of the right rotor against that of the left one with which the ends meet, faces parallel: the catenary. */
export function catenary(left: RotorEnd, right: RotorEnd): CouplingLine {
  const { offset, slope } = hanging(left, right)
  return { offset: 0 - offset, slope: 0 - slope }
}

/** The slope at which faces of a diameter stand open by so much more at the bottom than at the top. */
export const slopeOfGap = (gap: Micrometres, diameter: Millimetres): Milliradians => gap / diameter
