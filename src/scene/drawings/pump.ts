import { circle, lineMark, path, rect, type Mark } from './marks'
import type { DrawingFrame } from './frame'
import { brackets, engraved, nozzle } from './parts'

/** A volute between two bearing brackets: the spiral seen on its edge, its delivery nozzle upward. */
export function pump(f: DrawingFrame): Mark[] {
  const w = f.r - f.l
  const h = f.half
  const middle = (f.l + f.r) / 2
  const belly = Math.min(0.24 * w, 1.15 * h)
  const bracket = (out: -1 | 1): Mark[] => {
    const [near, far] = [middle + out * belly * 0.92, middle + out * 0.46 * w]
    return [
      path(
        `M${near} ${f.axis - 0.5 * h}L${far} ${f.axis - 0.26 * h}V${f.axis + 0.26 * h}L${near} ${f.axis + 0.5 * h}Z`,
        'body',
      ),
      rect(Math.min(far, far - out * 0.1 * w), f.axis - 0.32 * h, 0.1 * w, 0.64 * h, 'body', 4),
      lineMark((near + far) / 2, f.axis - 0.38 * h, (near + far) / 2, f.axis + 0.38 * h, 'fine'),
    ]
  }
  return [
    ...brackets(f, f.axis + 0.25 * h, Math.min(20, 0.12 * w)),
    ...bracket(-1),
    ...bracket(1),
    ...nozzle(middle + belly * 0.35, f.axis - 0.6 * h, f.axis - 1.5 * h, belly * 0.7),
    path(
      `M${middle - belly} ${f.axis}C${middle - belly} ${f.axis - 1.1 * h} ${middle - belly * 0.5} ${f.axis - 1.16 * h} ${middle} ${f.axis - 1.12 * h}` +
        `C${middle + belly * 0.6} ${f.axis - 1.12 * h} ${middle + belly} ${f.axis - 0.9 * h} ${middle + belly} ${f.axis}` +
        `C${middle + belly} ${f.axis + 0.95 * h} ${middle + belly * 0.5} ${f.axis + h} ${middle} ${f.axis + h}` +
        `C${middle - belly * 0.5} ${f.axis + h} ${middle - belly} ${f.axis + 0.95 * h} ${middle - belly} ${f.axis}Z`,
      'body',
    ),
    path(
      `M${middle + belly * 0.7} ${f.axis - 0.8 * h}C${middle - belly * 0.5} ${f.axis - 1.0 * h} ${middle - belly * 0.8} ${f.axis - 0.1 * h} ${middle - belly * 0.45} ${f.axis + 0.35 * h}`,
      'fine',
    ),
    ...engraved(middle - belly * 0.72, middle + belly * 0.72, f.axis, h * 0.96),
    rect(middle - belly - 3, f.axis - 0.62 * h, 5, 1.24 * h, 'body', 2),
    rect(middle + belly - 2, f.axis - 0.62 * h, 5, 1.24 * h, 'body', 2),
    circle(middle + belly * 0.35, f.axis - 0.82 * h, 2, 'fine'),
  ]
}
