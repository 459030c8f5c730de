import { circle, lineMark, path, poly, rect, type Mark } from './marks'
import type { DrawingFrame } from './frame'
import { bolts, pedestal } from './parts'

/** A casing that widens stage by stage toward its exhaust, a steam chest on the narrow end. */
export function turbine(f: DrawingFrame): Mark[] {
  const w = f.r - f.l
  const h = f.half * 1.1
  const x = (part: number) => f.l + part * w
  const up = (part: number) => f.axis - part * h
  const down = (part: number) => f.axis + part * h
  const rows = [0.3, 0.36, 0.42, 0.49, 0.56, 0.64]
  const heightAt = (part: number) => 0.45 + ((part - 0.24) / 0.44) * 0.5
  const width = Math.min(30, 0.13 * w)
  return [
    ...f.feet.flatMap((foot) => pedestal(foot, f, f.axis, width)),
    // the exhaust leaves downwards, through the foundation
    poly(
      [
        [x(0.68), down(0.6)],
        [x(0.92), down(0.6)],
        [x(0.9), f.foot],
        [x(0.7), f.foot],
      ],
      'shade',
    ),
    path(
      `M${x(0.13)} ${up(0.38)}L${x(0.24)} ${up(0.45)}L${x(0.68)} ${up(0.95)}Q${x(0.72)} ${up(1.06)} ${x(0.8)} ${up(1.06)}` +
        `H${x(0.86)}Q${x(0.93)} ${up(1.06)} ${x(0.93)} ${up(0.8)}V${down(0.8)}Q${x(0.93)} ${down(0.95)} ${x(0.86)} ${down(0.95)}` +
        `H${x(0.68)}L${x(0.24)} ${down(0.45)}L${x(0.13)} ${down(0.38)}Z`,
      'body',
    ),
    ...rows.map((part) =>
      lineMark(x(part), up(heightAt(part) - 0.05), x(part), down(heightAt(part) - 0.05), 'fine'),
    ),
    lineMark(x(0.7), up(0.95), x(0.7), down(0.95), 'edge'),
    path(`M${x(0.76)} ${up(0.7)}A${0.08 * w} ${0.7 * h} 0 0 1 ${x(0.76)} ${down(0.7)}`, 'fine'),
    lineMark(x(0.13), f.axis, x(0.93), f.axis, 'edge'),
    ...bolts(x(0.14), x(0.92), f.axis, 12),
    // steam chest, its valve stem and the pipe that feeds it
    rect(x(0.2), up(0.98), 0.13 * w, 0.5 * h, 'body', 3),
    lineMark(x(0.2) + 0.065 * w, up(0.98), x(0.2) + 0.065 * w, up(1.3), 'edge'),
    circle(x(0.2) + 0.065 * w, up(1.36), 4, 'edge'),
    rect(x(0.07), up(0.86), 0.13 * w, 0.2 * h, 'body'),
    rect(x(0.06), up(0.94), 4, 0.36 * h, 'body'),
    rect(x(0.8), up(1.16), 0.06 * w, 0.1 * h, 'body'),
  ]
}
