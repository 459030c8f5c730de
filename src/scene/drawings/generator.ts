import { circle, lineMark, rect, type Mark } from './marks'
import type { DrawingFrame } from './frame'
import { pedestal } from './parts'

/** A block under a cooler house, louvres on its side, an exciter outside the bearing at the open end. */
export function generator(f: DrawingFrame): Mark[] {
  const w = f.r - f.l
  const h = f.half * 1.1
  const [a, b] = [f.l + 0.14 * w, f.r - 0.14 * w]
  const deep = f.axis + Math.min(1.1 * h, (f.foot - f.axis) * 0.86)
  const louvre = (x: number): Mark[] => [
    rect(x, f.axis - 0.5 * h, 0.16 * w, 0.8 * h, 'shade'),
    ...[0, 1, 2, 3, 4].map((k) =>
      lineMark(
        x + 3,
        f.axis + (-0.36 + 0.14 * k) * h,
        x + 0.16 * w - 3,
        f.axis + (-0.36 + 0.14 * k) * h,
        'fine',
      ),
    ),
  ]
  const exciter = (x: number, out: -1 | 1): Mark[] => [
    rect(Math.min(x, x + out * 0.11 * w), f.axis - 0.46 * h, 0.11 * w, 0.92 * h, 'body', 5),
    circle(x + out * 0.055 * w, f.axis, 0.2 * h, 'fine'),
  ]
  return [
    ...(f.open.left ? exciter(f.l + 0.11 * w, -1) : []),
    ...(f.open.right ? exciter(f.r - 0.11 * w, 1) : []),
    ...f.feet.flatMap((x) => pedestal(x, f, f.axis, Math.min(26, 0.12 * w))),
    rect(a, f.axis - h, b - a, deep - f.axis + h, 'body', 2),
    rect(a + 0.12 * w, f.axis - 1.5 * h, b - a - 0.24 * w, 0.5 * h, 'body', 2),
    lineMark(a + 0.12 * w, f.axis - 1.34 * h, b - 0.12 * w, f.axis - 1.34 * h, 'fine'),
    ...louvre(a + 0.06 * w),
    ...louvre(b - 0.22 * w),
    lineMark((a + b) / 2, f.axis - h, (a + b) / 2, deep, 'fine'),
    lineMark(a, deep - 0.16 * h, b, deep - 0.16 * h, 'fine'),
    lineMark(a + 0.03 * w, f.axis - h, a + 0.03 * w, deep, 'fine'),
    lineMark(b - 0.03 * w, f.axis - h, b - 0.03 * w, deep, 'fine'),
  ]
}
