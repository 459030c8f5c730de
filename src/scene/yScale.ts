import { tol } from '../mechanics/tolerances'
import { micrometresPer, type Micrometres } from '../mechanics/units'
import type { Train } from '../mechanics/train'

/** The vertical scale of rise or side: how much it exaggerates, and where its lines stand. */
export interface YScale {
  readonly height: number
  /** Vertical over horizontal scale, a round number. */
  readonly ratio: number
  /** Place of a value; up the page is up, or the side that `up` names. */
  at(value: Micrometres): number
  readonly ticks: readonly { readonly value: Micrometres; readonly y: number }[]
  /** Length of the scale bar: one step between ticks. */
  readonly step: Micrometres
  readonly low: Micrometres
  readonly high: Micrometres
}

/** Smallest distance between two tick lines, so that their digits never touch (px). */
const tickRoom = 22
const roundNumbers = [1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10]

/** Fits the values (um) into the height (px) with a round ratio of exaggeration; `up` is -1 where + is down the page. */
export function yScale(
  train: Train,
  values: readonly Micrometres[],
  height: number,
  perMm: number,
  up: 1 | -1,
): YScale {
  const pad = 12
  const low = Math.min(0, ...values)
  const high = Math.max(0, ...values)
  const span = Math.max(high - low, 20)
  const fit = (height - 2 * pad) / span
  const ratio = roundDown((fit * 1000) / perMm)
  const perUm = (ratio * perMm) / 1000
  const middle = (low + high) / 2
  const at = (value: Micrometres): number => height / 2 - up * (value - middle) * perUm
  const fine = micrometresPer[train.units.fine]
  const step = roundUp(tickRoom / perUm / fine) * fine
  const reach = (height - 2 * pad) / 2 / perUm
  const ticks = []
  for (let k = Math.ceil((middle - reach) / step); k * step <= middle + reach + tol.dust; k++)
    ticks.push({ value: k * step, y: at(k * step) })
  return {
    height,
    ratio,
    at,
    ticks,
    step,
    low: middle - height / 2 / perUm,
    high: middle + height / 2 / perUm,
  }
}

function roundDown(value: number): number {
  const power = 10 ** Math.floor(Math.log10(value))
  return power * (roundNumbers.findLast((n) => n <= value / power + tol.dust) ?? 1)
}

/** Steps that count easily: 1, 2, 5, and their tens. */
function roundUp(value: number): number {
  const power = 10 ** Math.floor(Math.log10(value))
  return power * ([1, 2, 5, 10].find((n) => n >= value / power - tol.dust) ?? 10)
}
