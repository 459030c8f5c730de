import { circle, lineMark, path, rect, type Mark } from './marks'
import type { DrawingFrame } from './frame'
import { brackets } from './parts'

/** A ring chamber around the wheel, fed from above, and a diffuser that opens away from the shaft. */
export function expander(f: DrawingFrame): Mark[] {
  const w = f.r - f.l
  const h = f.half * 1.1
  const x = (part: number) => f.l + part * w
  return [
    ...brackets(f, f.axis + 0.2 * h, Math.min(22, 0.13 * w)),
    rect(x(0.5), f.axis - 0.4 * h, 0.42 * w, 0.8 * h, 'body', 5),
    lineMark(x(0.84), f.axis - 0.4 * h, x(0.84), f.axis + 0.4 * h, 'fine'),
    path(
      `M${x(0.32)} ${f.axis - 0.42 * h}Q${x(0.14)} ${f.axis - 0.5 * h} ${x(0.04)} ${f.axis - 0.82 * h}V${f.axis + 0.82 * h}` +
        `Q${x(0.14)} ${f.axis + 0.5 * h} ${x(0.32)} ${f.axis + 0.42 * h}Z`,
      'body',
    ),
    rect(x(0.02), f.axis - 0.92 * h, 5, 1.84 * h, 'body', 1),
    ...[0.12, 0.19, 0.26].map((part) =>
      lineMark(x(part), f.axis - (0.78 - part) * h, x(part), f.axis + (0.78 - part) * h, 'fine'),
    ),
    rect(x(0.36), f.axis - 1.45 * h, 0.16 * w, 0.6 * h, 'body'),
    rect(x(0.34), f.axis - 1.48 * h, 0.2 * w, 4, 'body'),
    rect(x(0.3), f.axis - h, 0.28 * w, 2 * h, 'body', Math.min(0.12 * w, 0.5 * h)),
    circle(x(0.44), f.axis - 0.66 * h, 0.2 * h, 'fine'),
    circle(x(0.44), f.axis + 0.66 * h, 0.2 * h, 'fine'),
    lineMark(x(0.44), f.axis - 0.4 * h, x(0.44), f.axis + 0.4 * h, 'fine'),
    lineMark(x(0.3), f.axis, x(0.58), f.axis, 'edge'),
  ]
}
