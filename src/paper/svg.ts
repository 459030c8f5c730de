import type { Mark } from '../scene/drawings/marks'
import { escape } from './escape'
import type { Figure, PaperMark } from './page'
import { pxPerMm } from './size'

/** A figure as inline SVG, as large on paper as it says; ink comes from the looks in the style sheet. */
export function svgOf({ width, height, name, marks, enlarged = 1 }: Figure): string {
  const px = (mm: number) => Number(((mm * pxPerMm) / enlarged).toFixed(3))
  return (
    `<svg width="${width}mm" height="${height}mm" viewBox="0 0 ${px(width)} ${px(height)}"` +
    ` role="img" aria-label="${escape(name)}">${marks.map(markOf).join('')}</svg>`
  )
}

function markOf(mark: PaperMark): string {
  switch (mark.kind) {
    case 'group':
      return `<g transform="translate(${mark.x.toFixed(2)} ${mark.y.toFixed(2)})">${mark.marks.map(markOf).join('')}</g>`
    case 'path': {
      const dash =
        mark.dash === undefined || mark.dash === '' ? '' : ` stroke-dasharray="${mark.dash}"`
      return `<path class="${mark.look}"${fillOf(mark.look)} d="${mark.d}"${dash}/>`
    }
    case 'circle':
      return `<circle class="${mark.look}"${fillOf(mark.look)} cx="${mark.x}" cy="${mark.y}" r="${mark.r}"/>`
    case 'label':
      return (
        `<text${mark.halo === true ? ' class="halo"' : ''} x="${mark.x.toFixed(2)}" y="${mark.y.toFixed(2)}" font-size="${mark.size}"` +
        ` text-anchor="${mark.anchor}"${mark.bold === true ? ' font-weight="700"' : ''}>${escape(mark.text)}</text>`
      )
  }
}

/** Hatchings are named where they are used, so that they are found in whatever page the sheet stands. */
const fillOf = (look: Mark['look']): string => {
  switch (look) {
    case 'hatch':
    case 'bound-hatch':
      return ' fill="url(#paper-hatch)"'
    case 'ground':
      return ' fill="url(#paper-ground)"'
    default:
      return ''
  }
}

/** The hatchings, once for the whole sheet. */
export const patterns =
  '<svg class="patterns" width="0" height="0" aria-hidden="true"><defs>' +
  '<pattern id="paper-hatch" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">' +
  '<line class="hatching" x1="1" y1="0" x2="1" y2="5"/></pattern>' +
  '<pattern id="paper-ground" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(40)">' +
  '<line class="ground-hatching" x1="1" y1="0" x2="1" y2="6"/></pattern>' +
  '</defs></svg>'
