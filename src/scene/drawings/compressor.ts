import { circle, lineMark, rect, type Mark } from './marks'
import type { DrawingFrame } from './frame'
import { brackets, engraved, nozzle } from './parts'

/** A barrel closed by stepped covers, bearing housings outside them, two nozzles on top. */
export function compressor(f: DrawingFrame): Mark[] {
  const w = f.r - f.l
  const h = f.half * 1.05
  const [a, b] = [f.l + 0.17 * w, f.r - 0.17 * w]
  const pipe = Math.min(0.14 * w, 26)
  const end = (from: number, out: -1 | 1): Mark[] => {
    const cover = from + out * 0.045 * w
    const housing = from + out * 0.15 * w
    return [
      rect(
        Math.min(cover, housing),
        f.axis - 0.4 * h,
        Math.abs(housing - cover),
        0.8 * h,
        'body',
        4,
      ),
      lineMark(
        housing - out * 0.035 * w,
        f.axis - 0.4 * h,
        housing - out * 0.035 * w,
        f.axis + 0.4 * h,
        'fine',
      ),
      rect(Math.min(from, cover), f.axis - 0.74 * h, Math.abs(cover - from), 1.48 * h, 'body', 2),
      ...[-0.58, -0.2, 0.2, 0.58].map((k) =>
        circle(from + out * 0.024 * w, f.axis + k * h, 1.6, 'fine'),
      ),
    ]
  }
  return [
    ...brackets(f, f.axis + 0.3 * h, Math.min(24, 0.12 * w)),
    ...nozzle(a + 0.2 * (b - a), f.axis - 0.9 * h, f.axis - 1.42 * h, pipe),
    ...nozzle(b - 0.2 * (b - a), f.axis - 0.9 * h, f.axis - 1.34 * h, pipe * 0.8),
    ...end(a, -1),
    ...end(b, 1),
    rect(a, f.axis - h, b - a, 2 * h, 'body', 7),
    ...engraved(a, b, f.axis, h),
    lineMark(a + 0.07 * (b - a), f.axis - h + 1, a + 0.07 * (b - a), f.axis + h - 1, 'edge'),
    lineMark(b - 0.07 * (b - a), f.axis - h + 1, b - 0.07 * (b - a), f.axis + h - 1, 'edge'),
    lineMark(a + 6, f.axis - 0.55 * h, b - 6, f.axis - 0.55 * h, 'fine'),
  ]
}
