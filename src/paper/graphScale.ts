import { tol } from '../mechanics/tolerances'
import {
  micrometresPer,
  millimetresPer,
  type Micrometres,
  type Millimetres,
} from '../mechanics/units'
import type { Train } from '../mechanics/train'

/** Round scales that people have rulers and graph paper for. */
const along = [1, 2, 2.5, 5, 10, 15, 20, 25, 30, 40, 50, 60, 75, 80, 100, 120, 150, 200, 250, 300]
const across = [1000, 500, 400, 250, 200, 100, 50, 40, 25, 20, 10]
const steps = [1, 2, 5, 10]

/** The two scales of a graph on paper; no stretch is left out, so that a ruler can be laid on it. */
export interface GraphScale {
  /** 1 : along */
  readonly along: number
  /** across : 1 */
  readonly across: number
  /** Distance between grid lines. */
  readonly lengthStep: Millimetres
  readonly valueStep: Micrometres
}

/**
 * The largest round scales at which a train fits.
 * @param length of the train, and `span` of what is drawn across it (um)
 * @param width,height of the drawing on paper (mm)
 */
export function graphScale(
  train: Train,
  { length, span }: { readonly length: Millimetres; readonly span: Micrometres },
  { width, height }: { readonly width: Millimetres; readonly height: Millimetres },
): GraphScale {
  const one = along.find((s) => length / s <= width) ?? Math.ceil(length / width / 100) * 100
  const many =
    across.find((s) => (span / 1000) * s <= height) ??
    [8, 5, 4, 2.5, 2, 1, 0.5, 0.25, 0.1].find((s) => (span / 1000) * s <= height) ??
    height / Math.max(1, span / 1000)
  return {
    along: one,
    across: many,
    lengthStep: roundUp(18 * one, millimetresPer[train.units.length]),
    valueStep: roundUp((8 * 1000) / many, micrometresPer[train.units.fine]),
  }
}

/** The next value that counts easily in the document's unit. */
function roundUp(value: number, unit: number): number {
  const power = 10 ** Math.floor(Math.log10(value / unit))
  const round = steps.find((n) => n >= value / unit / power - tol.dust) ?? 10
  return round * power * unit
}
