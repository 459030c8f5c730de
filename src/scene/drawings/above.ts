import type { Body } from '../../mechanics/train'
import { circle, lineMark, path, poly, rect, type Mark } from './marks'

/** Where a casing seen from above has to fit, in px. */
export interface Above {
  readonly l: number
  readonly r: number
  readonly axis: number
  /** Half its width. */
  readonly half: number
}

/** A machine's casing from above, told apart by its outline; gearboxes draw their own. */
export function casingAbove(role: Body['role'], f: Above): Mark[] {
  const { l, r, axis, half } = f
  const w = r - l
  const plain = (a: number, b: number, round = 3): Mark =>
    rect(l + a * w, axis - half, (b - a) * w, 2 * half, 'shade', round)
  const neck = (a: number, b: number, part: number): Mark =>
    rect(l + a * w, axis - part * half, (b - a) * w, 2 * part * half, 'body', 2)
  const along = (parts: readonly number[], a: number, b: number): Mark[] =>
    parts.map((k) => lineMark(l + a * w, axis + k * half, l + b * w, axis + k * half, 'fine'))
  const across = (parts: readonly number[], part = 1): Mark[] =>
    parts.map((k) => lineMark(l + k * w, axis - part * half, l + k * w, axis + part * half, 'fine'))
  switch (role) {
    case 'motor':
    case 'generator':
      return [
        neck(0.02, 0.98, 0.5),
        plain(0.14, 0.86),
        ...along([-0.75, -0.5, -0.25, 0.25, 0.5, 0.75], 0.16, 0.84),
      ]
    case 'turbine':
      return [
        neck(0.04, 0.96, 0.26),
        poly(
          [
            [l + 0.14 * w, axis - 0.4 * half],
            [l + 0.66 * w, axis - 0.9 * half],
            [l + 0.7 * w, axis - half],
            [l + 0.92 * w, axis - half],
            [l + 0.92 * w, axis + half],
            [l + 0.7 * w, axis + half],
            [l + 0.66 * w, axis + 0.9 * half],
            [l + 0.14 * w, axis + 0.4 * half],
          ],
          'shade',
        ),
        ...across([0.3, 0.4, 0.5, 0.6], 0.5),
        ...across([0.7]),
      ]
    case 'compressor':
      return [
        neck(0.02, 0.98, 0.36),
        neck(0.13, 0.87, 0.74),
        plain(0.18, 0.82, 6),
        circle(l + 0.32 * w, axis, half * 0.34, 'outline'),
        circle(l + 0.68 * w, axis, half * 0.28, 'outline'),
      ]
    case 'pump':
    case 'expander':
      return [
        neck(0.05, 0.95, 0.4),
        path(
          `M${l + 0.3 * w} ${axis - 0.9 * half}H${l + 0.7 * w}L${l + 0.74 * w} ${axis}L${l + 0.7 * w} ${axis + 0.9 * half}H${l + 0.3 * w}L${l + 0.26 * w} ${axis}Z`,
          'shade',
        ),
        circle(l + 0.56 * w, axis - 0.3 * half, half * 0.32, 'outline'),
      ]
    case 'fan':
    case 'blower':
      return [neck(0.05, 0.95, 0.34), plain(0.28, 0.72), ...across([0.36, 0.44, 0.52, 0.6, 0.66])]
    case 'engine':
      return [
        neck(0, 1, 0.5),
        plain(0.08, 0.88),
        ...[0.16, 0.3, 0.44, 0.58, 0.72].map((k) =>
          circle(l + (k + 0.04) * w, axis, Math.min(half * 0.5, 0.05 * w), 'outline'),
        ),
      ]
    case 'fluid-drive':
      return [plain(0, 1, 4), ...across([0.46, 0.54]), ...along([-0.7, 0.7], 0.04, 0.96)]
    case 'gearbox':
    case 'other':
    case 'skid':
      return [plain(0, 1)]
  }
}
