import { lineMark, rect, type Mark } from './marks'

/** Two hubs and the spacer between their flex planes; one pair of flanges where the planes are one (px). */
export function couplingMarks(p: number, q: number, axis: number, half: number): Mark[] {
  const r = Math.max(6, Math.min(half * 0.42, 20))
  const hub = Math.min(12, r * 0.8)
  const span = q - p
  const flange = (x: number, out: -1 | 1): Mark[] => [
    rect(Math.min(x, x + out * hub), axis - r * 0.6, hub, r * 1.2, 'body', 1),
    rect(Math.min(x, x + out * 3), axis - r, 3, 2 * r, 'body'),
  ]
  if (span < 5)
    return [
      ...flange(p - 0.8, -1),
      ...flange(q + 0.8, 1),
      lineMark(p, axis - r - 2, p, axis + r + 2, 'edge'),
    ]
  return [
    rect(p, axis - r * 0.45, span, r * 0.9, 'body'),
    lineMark(p + 3, axis - r * 0.15, q - 3, axis - r * 0.15, 'fine'),
    lineMark(p + 3, axis + r * 0.2, q - 3, axis + r * 0.2, 'fine'),
    ...flange(p, -1),
    ...flange(q, 1),
    lineMark(p + 1.5, axis - r, p + 1.5, axis + r, 'edge'),
    lineMark(q - 1.5, axis - r, q - 1.5, axis + r, 'edge'),
  ]
}
