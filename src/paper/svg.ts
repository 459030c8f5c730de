import type { Mark } from '../scene/drawings/marks'
import { attribute, markup, type Markup } from './markup'
import type { Figure, PaperMark } from './page'
import { pxPerMm } from './size'

/** A figure as inline SVG, as large on paper as it says; ink comes from the looks in the style sheet. */
export function svgOf({ width, height, name, marks, enlarged = 1 }: Figure): Markup {
  const px = (mm: number) => Number(((mm * pxPerMm) / enlarged).toFixed(3))
  const box = markup`width="${width}mm" height="${height}mm" viewBox="0 0 ${px(width)} ${px(height)}"`
  return markup`<svg ${box} role="img" aria-label="${name}">${marks.map(markOf)}</svg>`
}

function markOf(mark: PaperMark): Markup {
  switch (mark.kind) {
    case 'group':
      return markup`<g transform="translate(${mark.x.toFixed(2)} ${mark.y.toFixed(2)})">${mark.marks.map(markOf)}</g>`
    case 'path':
      return markup`<path class="${mark.look}"${fillOf(mark.look)} d="${mark.d}"${attribute('stroke-dasharray', mark.dash)}/>`
    case 'circle':
      return markup`<circle class="${mark.look}"${fillOf(mark.look)} cx="${mark.x}" cy="${mark.y}" r="${mark.r}"/>`
    case 'label': {
      const place = markup`x="${mark.x.toFixed(2)}" y="${mark.y.toFixed(2)}" font-size="${mark.size}" text-anchor="${mark.anchor}"`
      const halo = attribute('class', mark.halo === true ? 'halo' : '')
      const weight = attribute('font-weight', mark.bold === true ? '700' : '')
      return markup`<text${halo} ${place}${weight}>${mark.text}</text>`
    }
  }
}

/** Hatchings are named where they are used, so that they are found in whatever page the sheet stands. */
const fillOf = (look: Mark['look']): Markup => {
  const hatched = look === 'hatch' || look === 'bound-hatch'
  const fill = hatched ? 'url(#paper-hatch)' : look === 'ground' ? 'url(#paper-ground)' : ''
  return attribute('fill', fill)
}

/** The hatchings, once for the whole sheet. */
export const patterns = [
  markup`<svg class="patterns" width="0" height="0" aria-hidden="true"><defs>`,
  markup`<pattern id="paper-hatch" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">`,
  markup`<line class="hatching" x1="1" y1="0" x2="1" y2="5"/></pattern>`,
  markup`<pattern id="paper-ground" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(40)">`,
  markup`<line class="ground-hatching" x1="1" y1="0" x2="1" y2="6"/></pattern>`,
  markup`</defs></svg>`,
]
