import { lineMark, rect, type Mark } from './marks'
import type { DrawingFrame } from './frame'
import { brackets } from './parts'

/** A machine of no stated kind: a plain casing with the diagonals of an unspecified part. */
export function other(f: DrawingFrame): Mark[] {
  const w = f.r - f.l
  const h = f.half
  const [a, b] = [f.l + 0.08 * w, f.r - 0.08 * w]
  return [
    ...brackets(f, f.axis + 0.5 * h, Math.min(20, 0.12 * w)),
    rect(f.l, f.axis - 0.4 * h, w, 0.8 * h, 'body', 4),
    rect(a, f.axis - h, b - a, 2 * h, 'body', 4),
    lineMark(a, f.axis - h, b, f.axis + h, 'fine'),
    lineMark(a, f.axis + h, b, f.axis - h, 'fine'),
  ]
}
