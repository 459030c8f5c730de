import { circle, lineMark, path, rect, type Mark } from './marks'
import type { DrawingFrame } from './frame'
import { brackets, nozzle } from './parts'

/** A ribbed case of two lobes, one above the other, gear cover at one end, wide mouths up and down. */
export function blower(f: DrawingFrame): Mark[] {
  const w = f.r - f.l
  const h = f.half
  const [a, b] = [f.l + 0.18 * w, f.r - 0.12 * w]
  const [top, low] = [f.axis - 1.25 * h, f.axis + 0.62 * h]
  const waist = (top + low) / 2
  return [
    ...brackets(f, low - 0.2 * h, Math.min(22, 0.14 * w)),
    ...nozzle((a + b) / 2, top + 4, top - 0.34 * h, 0.3 * w),
    path(
      `M${a} ${top + 6}Q${a} ${top} ${a + 6} ${top}H${b - 6}Q${b} ${top} ${b} ${top + 6}V${waist - 5}L${b - 5} ${waist}L${b} ${waist + 5}` +
        `V${low - 6}Q${b} ${low} ${b - 6} ${low}H${a + 6}Q${a} ${low} ${a} ${low - 6}V${waist + 5}L${a + 5} ${waist}L${a} ${waist - 5}Z`,
      'body',
    ),
    ...[0.16, 0.33, 0.5, 0.67, 0.84].map((part) =>
      lineMark(a + part * (b - a), top + 3, a + part * (b - a), low - 3, 'fine'),
    ),
    lineMark(a + 6, waist, b - 6, waist, 'edge'),
    rect(a - 0.12 * w, top + 0.18 * h, 0.12 * w, low - top - 0.3 * h, 'body', 5),
    circle(a - 0.06 * w, f.axis, 0.16 * h, 'fine'),
    circle(a - 0.06 * w, f.axis - 0.66 * h, 0.16 * h, 'fine'),
    rect(b, f.axis - 0.3 * h, 0.07 * w, 0.6 * h, 'body', 3),
  ]
}
