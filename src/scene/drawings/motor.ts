import { circle, lineMark, path, rect, type Mark } from './marks'
import type { DrawingFrame } from './frame'
import { brackets } from './parts'

/** A finned frame between two end shields, a terminal box on top, a fan cowl at the open end. */
export function motor(f: DrawingFrame): Mark[] {
  const w = f.r - f.l
  const h = f.half * 1.15
  const [a, b] = [f.l + 0.15 * w, f.r - 0.13 * w]
  const middle = (a + b) / 2
  const fins = Array.from({ length: 9 }, (_, i) => {
    const y = f.axis - 0.8 * h + (i * 1.6 * h) / 8
    return lineMark(a + 4, y, b - 4, y, 'fine')
  })
  const shield = (x: number, out: -1 | 1): Mark =>
    path(
      `M${x} ${f.axis - 0.9 * h}l${out * 0.035 * w} ${0.12 * h}L${x + out * 0.06 * w} ${f.axis - 0.34 * h}` +
        `V${f.axis + 0.34 * h}L${x + out * 0.035 * w} ${f.axis + 0.78 * h}L${x} ${f.axis + 0.9 * h}Z`,
      'body',
    )
  const cowl = (x: number, out: -1 | 1): Mark[] => {
    const end = x + out * 0.085 * w
    const [from, to] = [Math.min(x, end), Math.max(x, end)]
    return [
      rect(from, f.axis - 0.74 * h, to - from, 1.48 * h, 'body', 4),
      ...[-0.5, -0.3, -0.1, 0.1, 0.3, 0.5].map((k) =>
        lineMark(from + 3, f.axis + k * h, to - 3, f.axis + k * h, 'fine'),
      ),
    ]
  }
  const box = { x: middle - 0.13 * w, y: f.axis - 1.5 * h, w: 0.26 * w, h: 0.5 * h }
  return [
    ...brackets(f, f.axis + 0.6 * h, Math.min(22, 0.12 * w)),
    ...(f.open.left ? cowl(a - 0.05 * w, -1) : []),
    ...(f.open.right ? cowl(b + 0.05 * w, 1) : []),
    shield(a, -1),
    shield(b, 1),
    rect(a, f.axis - h, b - a, 2 * h, 'body', 3),
    ...fins,
    circle(b - 0.08 * w, f.axis - h - 4, 3.4, 'edge'),
    circle(a + 0.08 * w, f.axis - h - 4, 3.4, 'edge'),
    rect(box.x, box.y, box.w, box.h, 'body', 2),
    rect(box.x - 3, box.y - 3, box.w + 6, 5, 'body', 1),
    lineMark(box.x + 5, box.y + box.h * 0.55, box.x + box.w - 5, box.y + box.h * 0.55, 'fine'),
    rect(box.x + box.w, box.y + box.h * 0.35, 6, box.h * 0.3, 'shade'),
  ]
}
