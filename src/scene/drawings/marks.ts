/**
 * What is drawn, as data: shapes in px with a look. A look says what a mark means; the screen and
 * the paper decide how a look is inked.
 */
export type Look =
  | 'body' // a machine's casing: filled, outlined
  | 'shade' // a darker face of it
  | 'edge' // an outline, 1.6 px
  | 'outline' // an outline without filling, 1 px
  | 'fine' // line work inside an outline, 1 px
  | 'centre' // dash-dot: a shaft axis
  | 'solid' // filled with ink
  | 'ground'
  | 'grid'
  | 'zero'
  | 'found'
  | 'planned'
  | 'state'
  | 'drift'
  | 'drift-grown'
  | 'gate'
  | 'hatch' // filled with hatching, ink
  | 'bound' // brass, heavy
  | 'bound-hatch'
  | 'before' // dashed: as it is now
  | 'after' // solid: as it will be
  | 'reserve'
  | 'leader'
  | 'gap' // paper over a drawing, where the scale is broken

export type Mark =
  | { readonly kind: 'path'; readonly d: string; readonly look: Look; readonly dash?: string }
  | {
      readonly kind: 'circle'
      readonly x: number
      readonly y: number
      readonly r: number
      readonly look: Look
    }

type Point = readonly [x: number, y: number]

/** Hundredths of a px are finer than any screen; more digits only swell the page. */
const at = (value: number): number => Math.round(value * 100) / 100

/** A path as written, its numbers shortened. */
export const path = (d: string, look: Look, dash?: string): Mark =>
  stroked(
    d.replace(/-?\d+\.\d{3,}(e-?\d+)?/g, (digits) => String(at(Number(digits)))),
    look,
    dash,
  )

/** A path whose numbers are short already. */
const stroked = (d: string, look: Look, dash?: string): Mark =>
  dash === undefined ? { kind: 'path', d, look } : { kind: 'path', d, look, dash }

export const circle = (x: number, y: number, r: number, look: Look): Mark => ({
  kind: 'circle',
  x: at(x),
  y: at(y),
  r: at(Math.max(0, r)),
  look,
})

/** Straight strokes through points; closed when `close` is set. */
export const poly = (points: readonly Point[], look: Look, close = true, dash?: string): Mark =>
  stroked(
    points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${at(x)} ${at(y)}`).join('') +
      (close ? 'Z' : ''),
    look,
    dash,
  )

export const lineMark = (
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  look: Look,
  dash?: string,
): Mark =>
  poly(
    [
      [x1, y1],
      [x2, y2],
    ],
    look,
    false,
    dash,
  )

/** A rectangle, its corners rounded by `round`. */
export function rect(x: number, y: number, w: number, h: number, look: Look, round = 0): Mark {
  const r = Math.min(round, w / 2, h / 2)
  if (r <= 0)
    return poly(
      [
        [x, y],
        [x + w, y],
        [x + w, y + h],
        [x, y + h],
      ],
      look,
    )
  const arc = (dx: number, dy: number) => `a${at(r)} ${at(r)} 0 0 1 ${at(dx)} ${at(dy)}`
  return stroked(
    `M${at(x + r)} ${at(y)}h${at(w - 2 * r)}${arc(r, r)}v${at(h - 2 * r)}${arc(-r, r)}` +
      `h${at(2 * r - w)}${arc(-r, -r)}v${at(2 * r - h)}${arc(r, -r)}Z`,
    look,
  )
}
