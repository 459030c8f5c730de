import { circle, lineMark, path, rect, type Mark } from './marks'
import type { DrawingFrame } from './frame'
import { brackets } from './parts'

/** A row of cylinder heads over a block and its sump, a manifold along them, a flywheel housing. */
export function engine(f: DrawingFrame): Mark[] {
  const w = f.r - f.l
  const h = f.half * 1.1
  const [a, b] = [f.l + 0.08 * w, f.r - 0.14 * w]
  const count = Math.max(3, Math.min(6, Math.round((b - a) / 28)))
  const pitch = (b - a) / count
  const heads = Array.from({ length: count }, (_, i) => {
    const x = a + i * pitch
    return [
      rect(x + 2, f.axis - 1.42 * h, pitch - 4, 0.42 * h, 'body', 3),
      circle(x + pitch / 2, f.axis - 1.21 * h, Math.min(3, pitch * 0.12), 'fine'),
      rect(x + pitch * 0.22, f.axis - 0.42 * h, pitch * 0.56, 0.5 * h, 'shade', 3),
    ]
  }).flat()
  return [
    ...brackets(f, f.axis + 0.3 * h, Math.min(22, 0.12 * w)),
    path(
      `M${a + 6} ${f.axis + 0.5 * h}L${a + 0.1 * w} ${f.axis + 0.95 * h}H${b - 0.1 * w}L${b - 6} ${f.axis + 0.5 * h}Z`,
      'shade',
    ),
    rect(a, f.axis - h, b - a, 1.55 * h, 'body', 3),
    ...heads,
    lineMark(a, f.axis - 0.56 * h, b, f.axis - 0.56 * h, 'fine'),
    lineMark(a, f.axis + 0.24 * h, b, f.axis + 0.24 * h, 'fine'),
    rect(a + 4, f.axis - 0.9 * h, b - a - 8, 0.2 * h, 'body', 4),
    rect(b, f.axis - 0.78 * h, 0.13 * w, 1.5 * h, 'body', 6),
    circle(b + 0.065 * w, f.axis, 0.3 * h, 'fine'),
    rect(f.l, f.axis - 0.5 * h, 0.08 * w, 1.0 * h, 'body', 3),
  ]
}
