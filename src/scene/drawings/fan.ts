import { lineMark, path, poly, rect, type Mark } from './marks'
import type { DrawingFrame } from './frame'
import { brackets, pedestal } from './parts'

/** A scroll seen on its edge, with stiffening ribs, an inlet cone and an outlet duct; two pedestals. */
export function fan(f: DrawingFrame): Mark[] {
  const w = f.r - f.l
  const h = f.half * 1.12
  const [a, b] = [f.l + 0.28 * w, f.r - 0.28 * w]
  const ends = f.feet.length > 1 ? [f.feet[0] ?? f.l, f.feet.at(-1) ?? f.r] : []
  return [
    ...ends.flatMap((x) => pedestal(x, f, f.axis, Math.min(26, 0.14 * w))),
    ...(ends.length === 0 ? brackets(f, f.axis, 18) : []),
    rect(a + 0.06 * w, f.axis - 1.5 * h, b - a - 0.12 * w, 0.7 * h, 'body'),
    rect(a + 0.03 * w, f.axis - 1.52 * h, b - a - 0.06 * w, 5, 'body'),
    poly(
      [
        [a, f.axis - 0.55 * h],
        [a - 0.1 * w, f.axis - 0.8 * h],
        [a - 0.1 * w, f.axis + 0.8 * h],
        [a, f.axis + 0.55 * h],
      ],
      'shade',
    ),
    path(
      `M${a} ${f.axis - h}Q${(a + b) / 2} ${f.axis - 1.1 * h} ${b} ${f.axis - h}V${f.axis + 0.86 * h}` +
        `Q${(a + b) / 2} ${f.axis + 0.98 * h} ${a} ${f.axis + 0.86 * h}Z`,
      'body',
    ),
    ...[0.2, 0.4, 0.6, 0.8].map((part) =>
      lineMark(a + part * (b - a), f.axis - 1.02 * h, a + part * (b - a), f.axis + 0.9 * h, 'fine'),
    ),
    lineMark(a, f.axis - 0.5 * h, b, f.axis - 0.5 * h, 'fine'),
    lineMark(a, f.axis + 0.45 * h, b, f.axis + 0.45 * h, 'fine'),
    rect(b, f.axis - 0.22 * h, 0.05 * w, 0.44 * h, 'body', 2),
  ]
}
