import { fineDecimals } from '../../language/amounts'
import { tidy } from '../../language/tidy'
import type { CouplingLine, Rotor } from '../../mechanics/rotorSag'
import {
  kilogramsPer,
  massSign,
  micrometresPer,
  millimetresPer,
  toFine,
  type DocumentUnits,
} from '../../mechanics/units'
import type { TrainDocument } from '../schema'

/** What is asked of a rotor, in words, in the order in which it is asked. */
export const rotorFields = {
  span: 'between its bearings',
  overhang: 'from the near bearing to the face of the coupling',
  mass: 'mass without the coupling',
  diameter: 'diameter of a plain shaft as stiff',
  modulus: 'modulus of elasticity, GPa',
  half: 'mass of its half of the coupling',
} as const
export type RotorField = keyof typeof rotorFields

/** In the units of the document; the modulus in GPa. */
export type RotorEntered = Readonly<Record<RotorField, number | undefined>>

/** A rotor in engine units; or what it lacks, in words. */
export function rotorOf(
  entered: RotorEntered,
  { length }: DocumentUnits,
): { readonly rotor: Rotor } | { readonly lacks: readonly string[] } {
  const lacks = (Object.keys(rotorFields) as RotorField[]).filter(
    (key) => entered[key] === undefined,
  )
  if (lacks.length > 0) return { lacks: lacks.map((key) => rotorFields[key]) }
  const value = (key: RotorField) => entered[key] ?? NaN
  const mm = (key: RotorField) => value(key) * millimetresPer[length]
  const kg = (key: RotorField) => value(key) * kilogramsPer[length]
  return {
    rotor: {
      span: mm('span'),
      overhang: mm('overhang'),
      mass: kg('mass'),
      diameter: mm('diameter'),
      modulus: value('modulus'),
      half: kg('half'),
    },
  }
}

/** What a rotor was taken for, as it is kept with the aim. */
export function rotorWhy(entered: RotorEntered, { length }: DocumentUnits): string {
  const told = (key: RotorField) => String(entered[key] ?? '?')
  return `span ${told('span')} ${length}, overhang ${told('overhang')} ${length}, ${told('mass')} ${massSign[length]}, stiff as ${told('diameter')} ${length} of ${told('modulus')} GPa, half coupling ${told('half')} ${massSign[length]}`
}

/** A gap and an offset as entered, in engine units. */
export const lineGiven = (
  given: Readonly<Record<'gap' | 'diameter' | 'offset', number | undefined>>,
  units: DocumentUnits,
): { readonly gap: number; readonly diameter: number; readonly offset: number } | undefined => {
  const { gap, diameter, offset } = given
  if (gap === undefined || diameter === undefined || offset === undefined || !(diameter > 0))
    return undefined
  return {
    gap: gap * micrometresPer[units.fine],
    diameter: diameter * millimetresPer[units.length],
    offset: offset * micrometresPer[units.fine],
  }
}

/**
 * The document with a line wanted of a coupling, up and down, in every state; what was wanted sideways stays.
 * @param why kept with each aim
 */
export function withCatenaryAim(
  document: TrainDocument,
  index: number,
  { offset, slope }: CouplingLine,
  why: string,
): TrainDocument {
  const units = { ...document.units, temperature: document.units.temperature ?? 'C' }
  // one digit more than people read
  const z = Number(toFine(offset, units).toFixed(fineDecimals[units.fine] + 1)) + 0
  const sz = Number(tidy(slope).toFixed(4)) + 0
  const states = (document.states ?? [{ id: 'cold' }]).map(({ id }) => id)
  return {
    ...document,
    couplings: document.couplings.map((coupling, c) =>
      c !== index
        ? coupling
        : {
            ...coupling,
            aim: Object.fromEntries(
              states.map((id) => {
                const aim = coupling.aim?.[id]
                return [
                  id,
                  {
                    ...aim,
                    offset: { ...aim?.offset, z },
                    slope: { ...aim?.slope, z: sz },
                    why,
                  },
                ]
              }),
            ),
          },
    ),
  }
}
