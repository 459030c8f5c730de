import { lineMark, path, rect, type Mark } from './marks'
import type { DrawingFrame } from './frame'
import { bolts } from './parts'

/** A split case with ribs, a window on the mesh: wheel and pinion on axes of their own. */
export function gearbox(f: DrawingFrame): Mark[] {
  const w = f.r - f.l
  const h = f.half * 1.12
  const split = (f.axis + f.axisRight) / 2
  const [wheel, pinion] = [f.half * 0.72, f.half * 0.36]
  const [a, b] = [f.l + 0.3 * w, f.r - 0.3 * w]
  const lower = f.foot - split
  const ribs = [0.1, 0.26, 0.74, 0.9].map((part) =>
    lineMark(f.l + part * w, split + 4, f.l + part * w, f.foot - 5, 'fine'),
  )
  const teeth = (axis: number, r: number, lean: 1 | -1): Mark[] =>
    Array.from({ length: 9 }, (_, i) => {
      const x = a + ((i + 0.5) * (b - a)) / 9
      return lineMark(x - lean * 3, axis - r, x + lean * 3, axis + r, 'fine')
    })
  return [
    rect(f.l - 5, f.foot - 4, w + 10, 4, 'body'),
    path(
      `M${f.l} ${split}V${f.foot - 4}H${f.r}V${split}L${f.r - 0.02 * w} ${split - 0.7 * h}` +
        `Q${f.r - 0.03 * w} ${split - h} ${f.r - 0.16 * w} ${split - h}H${f.l + 0.16 * w}` +
        `Q${f.l + 0.03 * w} ${split - h} ${f.l + 0.02 * w} ${split - 0.7 * h}Z`,
      'body',
    ),
    ...ribs,
    lineMark(f.l + 0.03 * w, f.foot - 0.22 * lower, f.r - 0.03 * w, f.foot - 0.22 * lower, 'fine'),
    // the wheel behind, the pinion before it
    rect(a, f.axis - wheel, b - a, 2 * wheel, 'shade'),
    ...teeth(f.axis, wheel, 1),
    rect(a, f.axisRight - pinion, b - a, 2 * pinion, 'body'),
    ...teeth(f.axisRight, pinion, -1),
    rect(f.l - 4, split - 2.5, w + 8, 5, 'body'),
    ...bolts(f.l, a, split, 10),
    ...bolts(b, f.r, split, 10),
    // bearing caps at both ends, inspection cover and breather on top
    rect(f.l - 3, f.axis - 0.34 * h, 0.09 * w, 0.68 * h, 'body', 3),
    rect(f.r + 3 - 0.09 * w, f.axisRight - 0.34 * h, 0.09 * w, 0.68 * h, 'body', 3),
    rect(a + 4, split - h - 5, b - a - 8, 6, 'body', 2),
    rect(f.r - 0.24 * w, split - h - 10, 6, 11, 'body', 2),
  ]
}
