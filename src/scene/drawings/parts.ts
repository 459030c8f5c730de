import { lineMark, poly, rect, type Mark } from './marks'
import type { DrawingFrame } from './frame'

/**
 * Line work that several machines share. A round casing is shaded as engravers do: lines along it
 * that crowd together toward the lower edge. Places and sizes of all parts are px on the page.
 */
export function engraved(l: number, r: number, axis: number, half: number): Mark[] {
  return [24, 42, 56, 67, 76].map((degrees) => {
    const y = axis + half * Math.sin((degrees * Math.PI) / 180)
    return lineMark(l + 2, y, r - 2, y, 'fine')
  })
}

/** Bolts along a horizontal joint, a short stroke across it each. */
export function bolts(l: number, r: number, y: number, step = 11): Mark[] {
  const count = Math.max(1, Math.floor((r - l) / step))
  return Array.from({ length: count }, (_, i) => {
    const x = l + ((i + 0.5) * (r - l)) / count
    return lineMark(x, y - 2.5, x, y + 2.5, 'fine')
  })
}

/** A pipe stub with its flange, standing on a casing. */
export function nozzle(x: number, base: number, top: number, width: number): Mark[] {
  return [
    rect(x - width / 2, top, width, base - top, 'body'),
    rect(x - width / 2 - 3, top - 3, width + 6, 4, 'body'),
  ]
}

/** Feet as brackets: a web that widens to a pad under each foot. */
export function brackets(f: DrawingFrame, top: number, width = 15): Mark[] {
  return f.feet.flatMap((x) => [
    poly(
      [
        [x - width * 0.35, top],
        [x + width * 0.35, top],
        [x + width / 2, f.foot - 4],
        [x - width / 2, f.foot - 4],
      ],
      'shade',
    ),
    rect(x - width / 2 - 2, f.foot - 4, width + 4, 4, 'body'),
  ])
}

/** A pedestal that carries a bearing: splayed sides, a cap over the shaft. */
export function pedestal(x: number, f: DrawingFrame, axis: number, width: number): Mark[] {
  const cap = Math.min(9, f.half * 0.3)
  return [
    poly(
      [
        [x - width * 0.32, axis],
        [x + width * 0.32, axis],
        [x + width / 2, f.foot - 3],
        [x - width / 2, f.foot - 3],
      ],
      'shade',
    ),
    rect(x - width / 2 - 2, f.foot - 4, width + 4, 4, 'body'),
    rect(x - width * 0.38, axis - cap, width * 0.76, cap * 2, 'body', 3),
    lineMark(x - width * 0.38, axis, x + width * 0.38, axis, 'fine'),
  ]
}
