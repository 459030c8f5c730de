import { circle, lineMark, path, rect, type Mark } from './marks'
import type { DrawingFrame } from './frame'
import { bolts } from './parts'

/** Two wheels that face each other behind a window, an oil tank below, a scoop-tube drive on the side. */
export function fluidDrive(f: DrawingFrame): Mark[] {
  const w = f.r - f.l
  const h = f.half * 1.08
  const middle = (f.l + f.r) / 2
  const wheel = Math.min(0.17 * w, 0.8 * h)
  const tank = f.axis + 0.5 * (f.foot - f.axis)
  const bowl = (out: -1 | 1): Mark[] => [
    path(
      `M${middle + out * 3} ${f.axis - 0.72 * h}Q${middle + out * wheel} ${f.axis - 0.72 * h} ${middle + out * wheel} ${f.axis - 0.38 * h}` +
        `Q${middle + out * wheel} ${f.axis - 0.1 * h} ${middle + out * 3} ${f.axis - 0.1 * h}`,
      'edge',
    ),
    path(
      `M${middle + out * 3} ${f.axis + 0.72 * h}Q${middle + out * wheel} ${f.axis + 0.72 * h} ${middle + out * wheel} ${f.axis + 0.38 * h}` +
        `Q${middle + out * wheel} ${f.axis + 0.1 * h} ${middle + out * 3} ${f.axis + 0.1 * h}`,
      'edge',
    ),
    ...[0.3, 0.55, 0.8].map((part) =>
      lineMark(
        middle + out * part * wheel,
        f.axis - 0.66 * h,
        middle + out * part * wheel,
        f.axis - 0.16 * h,
        'fine',
      ),
    ),
  ]
  return [
    rect(f.l - 4, f.foot - 4, w + 8, 4, 'body'),
    path(
      `M${f.l + 0.02 * w} ${tank}L${f.l} ${f.foot - 4}H${f.r}L${f.r - 0.02 * w} ${tank}Z`,
      'shade',
    ),
    path(
      `M${f.l + 0.02 * w} ${tank}V${f.axis - 0.3 * h}Q${f.l + 0.04 * w} ${f.axis - 0.5 * h} ${f.l + 0.12 * w} ${f.axis - 0.52 * h}` +
        `Q${f.l + 0.26 * w} ${f.axis - 0.6 * h} ${middle - 0.22 * w} ${f.axis - 0.86 * h}Q${middle} ${f.axis - 1.22 * h} ${middle + 0.22 * w} ${f.axis - 0.86 * h}` +
        `Q${f.r - 0.26 * w} ${f.axis - 0.6 * h} ${f.r - 0.12 * w} ${f.axis - 0.52 * h}Q${f.r - 0.04 * w} ${f.axis - 0.5 * h} ${f.r - 0.02 * w} ${f.axis - 0.3 * h}V${tank}Z`,
      'body',
    ),
    lineMark(f.l + 0.02 * w, f.axis + 0.03 * h, middle - wheel - 4, f.axis + 0.03 * h, 'fine'),
    lineMark(middle + wheel + 4, f.axis + 0.03 * h, f.r - 0.02 * w, f.axis + 0.03 * h, 'fine'),
    ...bowl(-1),
    ...bowl(1),
    ...bolts(f.l + 0.05 * w, f.r - 0.05 * w, tank, 13),
    // oil level glass and the scoop tube's drive
    circle(f.l + 0.16 * w, (tank + f.foot) / 2, 4.5, 'edge'),
    lineMark(
      f.l + 0.16 * w - 4,
      (tank + f.foot) / 2 + 1,
      f.l + 0.16 * w + 4,
      (tank + f.foot) / 2 + 1,
      'fine',
    ),
    rect(f.r - 0.27 * w, tank + 4, 0.15 * w, Math.max(6, (f.foot - tank) * 0.5), 'body', 2),
  ]
}
