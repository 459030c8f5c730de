import { tol } from '../mechanics/tolerances'
import {
  kilogramsPer,
  newtonMetresPer,
  micrometresPer,
  millimetresPer,
  type DocumentUnits,
} from '../mechanics/units'
import type { Quantity } from './quantities'

/**
 * One number in other units; a quantity without a unit stays as it is.
 * @param value in the unit that `from` has for the quantity
 * @returns in the unit that `to` has for it
 */
export function converted(
  value: number,
  quantity: Quantity,
  from: DocumentUnits,
  to: DocumentUnits,
): number {
  const there = scale(quantity, from, to)
  const back = scale(quantity, to, from)
  if (!there || !back) return value
  const short = quantity === 'temperature' ? toBillionth : toTwelve
  const exact = there(value)
  const candidate = short(exact)
  const near = (a: number, b: number) =>
    Math.abs(a - b) <=
    tol.fewRoundings * Math.max(Math.abs(a), Math.abs(b), quantity === 'temperature' ? 500 : 0)
  // the same two questions are asked on the way back, so both ways take the short number or neither
  const leadsBack = short(value) !== value || near(back(candidate), value)
  return near(candidate, exact) && leadsBack ? candidate : exact
}

const toTwelve = (value: number): number => Number(value.toPrecision(12))
/** Temperatures cross zero, where digits that count from the first one say nothing. */
const toBillionth = (value: number): number => Number(value.toFixed(9))

/** How a quantity goes from one set of units to another; undefined where it keeps its value. */
function scale(
  quantity: Quantity,
  from: DocumentUnits,
  to: DocumentUnits,
): ((value: number) => number) | undefined {
  const ratio = (a: number, b: number) =>
    a === b ? undefined : (value: number) => (value * whole(a, b)) / whole(b, a)
  switch (quantity) {
    case 'length':
    case 'sliding':
      return ratio(millimetresPer[from.length], millimetresPer[to.length])
    case 'fine':
      return ratio(micrometresPer[from.fine], micrometresPer[to.fine])
    case 'mass':
      return ratio(kilogramsPer[from.length], kilogramsPer[to.length])
    case 'torque': {
      const [a, b] = [newtonMetresPer[from.length], newtonMetresPer[to.length]]
      return a === b ? undefined : (value) => (value * a) / b
    }
    case 'temperature':
      if (from.temperature === to.temperature) return undefined
      return from.temperature === 'F' ? (f) => (f - 32) / 1.8 : (c) => c * 1.8 + 32
    case 'expansion':
      if (from.temperature === to.temperature) return undefined
      return from.temperature === 'F' ? (e) => e * 1.8 : (e) => e / 1.8
    case 'slope':
    case 'speed':
    case 'hour':
    case 'time':
    case 'plain':
      return undefined
  }
}

/** The first of two factors as a whole number over their common part: products then round least. */
function whole(a: number, b: number): number {
  const [x, y] = [Math.round(a * 1e8), Math.round(b * 1e8)]
  const common = (m: number, n: number): number => (n === 0 ? m : common(n, m % n))
  return x / common(x, y)
}
