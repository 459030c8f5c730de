import {
  micrometresPer,
  millimetresPer,
  kilogramsPer,
  newtonMetresPer,
  type DocumentUnits,
} from '../../mechanics/units'
import type { Quantity } from '../quantities'

/** Units people type, as multiples of mm, um, mrad, 1e-6 per kelvin, kg and minutes. */
const lengths: Record<string, number> = {
  mm: 1,
  cm: 10,
  m: 1000,
  um: 1e-3,
  µm: 1e-3,
  in: 25.4,
  '"': 25.4,
  inch: 25.4,
  inches: 25.4,
  mil: 0.0254,
  mils: 0.0254,
  thou: 0.0254,
  ft: 304.8,
}
const slopes: Record<string, number> = {
  mrad: 1,
  'mm/m': 1,
  'mil/in': 1,
  'um/mm': 1,
  'µm/mm': 1,
  rad: 1000,
  deg: (Math.PI / 180) * 1000,
  '°': (Math.PI / 180) * 1000,
}
const masses: Record<string, number> = { kg: 1, t: 1000, lb: 0.45359237, lbs: 0.45359237 }
const torques: Record<string, number> = {
  'n·m': 1,
  nm: 1,
  'ft·lb': newtonMetresPer.in,
  'ft-lb': newtonMetresPer.in,
  ftlb: newtonMetresPer.in,
}
/** Millimetres a second. */
const slidings: Record<string, number> = { 'mm/s': 1, 'm/s': 1000, 'in/s': millimetresPer.in }
/** Minutes. */
const times: Record<string, number> = { min: 1, h: 60, s: 1 / 60 }
const degrees: Record<string, 'C' | 'F'> = { c: 'C', '°c': 'C', f: 'F', '°f': 'F' }

const table = (quantity: Quantity): Record<string, unknown> => {
  switch (quantity) {
    case 'length':
    case 'fine':
      return lengths
    case 'slope':
      return slopes
    case 'mass':
      return masses
    case 'torque':
      return torques
    case 'temperature':
      return degrees
    case 'speed':
      return { rpm: 1 }
    case 'sliding':
      return slidings
    case 'time':
      return times
    case 'expansion':
    case 'hour':
    case 'plain':
      return {}
  }
}

/** Whether a unit, as typed, can stand behind a quantity. */
export const unitNamed = (unit: string, quantity: Quantity): boolean =>
  Object.hasOwn(table(quantity), key(unit))

/** Units to propose, in the usual order. */
export const unitsOf = (quantity: Quantity): readonly string[] => {
  switch (quantity) {
    case 'length':
    case 'fine':
      return ['mm', 'µm', 'in', 'mil']
    case 'slope':
      return ['mrad', 'mm/m', 'mil/in']
    case 'mass':
      return ['kg', 't', 'lb']
    case 'torque':
      return ['N·m', 'ft·lb']
    case 'temperature':
      return ['°C', '°F']
    case 'speed':
      return ['rpm']
    case 'sliding':
      return ['mm/s', 'm/s', 'in/s']
    case 'time':
      return ['min', 'h']
    case 'expansion':
    case 'hour':
    case 'plain':
      return []
  }
}

/** A value in a typed unit, in the document's unit for that quantity. */
export function inDocument(
  value: number,
  unit: string,
  quantity: Quantity,
  units: DocumentUnits,
): number {
  const factor = (known: Record<string, number>): number => known[key(unit)] ?? NaN
  switch (quantity) {
    case 'length':
      return (value * factor(lengths)) / millimetresPer[units.length]
    case 'fine':
      return (value * factor(lengths) * 1000) / micrometresPer[units.fine]
    case 'slope':
      return value * factor(slopes)
    case 'mass':
      return (value * factor(masses)) / kilogramsPer[units.length]
    case 'torque':
      return (value * factor(torques)) / newtonMetresPer[units.length]
    case 'temperature': {
      const from = degrees[key(unit)]
      if (from === units.temperature) return value
      return from === 'F' ? (value - 32) / 1.8 : value * 1.8 + 32
    }
    case 'time':
      return value * factor(times)
    case 'sliding':
      return (value * factor(slidings)) / millimetresPer[units.length]
    case 'speed':
    case 'expansion':
    case 'hour':
    case 'plain':
      return value
  }
}

/** One spelling of a unit: the Greek letter and the micro sign look alike, capitals do not matter. */
const key = (unit: string): string => unit.toLowerCase().replace('μ', 'µ')
